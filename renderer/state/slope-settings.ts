import { computed, type ReadonlySignal } from '@preact/signals';
import * as z from 'zod';
import { DEFAULT_LIMITS, DEFAULT_SLOPE, type SkierLimits, type SlopeSettings } from './project.ts';
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

/** What a skier's limits may be, in the units people say. */
export const LIMIT_RANGES = {
  pushBodyWeights: [1.2, 6],
  pushRateBodyWeights: [2, 40],
  legSpeedMps: [0.2, 4],
  edgeDeg: [20, 80],
  angulationDeg: [10, 60],
} as const satisfies Record<keyof SkierLimits, readonly [number, number]>;

const within = (key: keyof SkierLimits) => {
  const [low, high] = LIMIT_RANGES[key];
  return z.number().min(low).max(high).catch(DEFAULT_LIMITS[key]);
};

const limits = z.object({
  pushBodyWeights: within('pushBodyWeights'),
  pushRateBodyWeights: within('pushRateBodyWeights'),
  legSpeedMps: within('legSpeedMps'),
  edgeDeg: within('edgeDeg'),
  angulationDeg: within('angulationDeg'),
});

const schema = z.object({
  ground: z.enum(['even', 'roller', 'steepening', 'file']).catch(DEFAULT_SLOPE.ground),
  groundFile: file.catch(DEFAULT_SLOPE.groundFile),
  programme: z.enum(['linked', 'rhythm', 'drawn', 'file', 'banked']).catch(DEFAULT_SLOPE.programme),
  programmeFile: file.catch(DEFAULT_SLOPE.programmeFile),
  shape: z.enum(['sine', 'trapezoid']).catch(DEFAULT_SLOPE.shape),
  traverseDeg: z.number().min(20).max(85).catch(DEFAULT_SLOPE.traverseDeg),
  clearanceM: z.number().min(0).max(2).catch(DEFAULT_SLOPE.clearanceM),
  limits: limits.catch(DEFAULT_LIMITS),
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
