import { computed, type ReadonlySignal } from '@preact/signals';
import * as z from 'zod';
import { DEFAULT_SLOPE, type SlopeSettings } from './project.ts';
import { edit, project } from './store.ts';

/** What the skis are sent down, and how they are skied. */
export const slope: ReadonlySignal<SlopeSettings> = computed(() => project.value.slope);

/** Changes the run as an undo step; a drag's moves share `key`. */
export function changeSlope(label: string, change: Partial<SlopeSettings>, key: string | null = null): void {
  edit(label, before => ({ ...before, slope: { ...before.slope, ...change } }), key);
}

const file = z.object({ name: z.string(), text: z.string() }).nullable();

const drawn = z
  .array(z.object({ at: z.number().min(0), deg: z.number().min(-80).max(80) }))
  .min(3)
  .max(25)
  .refine(points => points.every((point, i) => i === 0 || point.at > points[i - 1]!.at));

const schema = z.object({
  ground: z.enum(['even', 'roller', 'steepening', 'file']).catch(DEFAULT_SLOPE.ground),
  groundFile: file.catch(DEFAULT_SLOPE.groundFile),
  programme: z.enum(['linked', 'rhythm', 'drawn', 'file', 'banked']).catch(DEFAULT_SLOPE.programme),
  programmeFile: file.catch(DEFAULT_SLOPE.programmeFile),
  shape: z.enum(['sine', 'trapezoid']).catch(DEFAULT_SLOPE.shape),
  drawn: drawn.catch([...DEFAULT_SLOPE.drawn]),
  ghost: z.string().nullable().optional().catch(DEFAULT_SLOPE.ghost),
});

/** Settings from a draft; every value that is none falls back to its default, as does a pair not in the rack. */
export function slopeFrom(value: unknown, ids: ReadonlySet<string>): SlopeSettings {
  const read = schema.safeParse(value);
  if (!read.success) return DEFAULT_SLOPE;
  const { ghost, ...settings } = read.data;
  return typeof ghost === 'string' && !ids.has(ghost) ? settings : { ...settings, ghost };
}
