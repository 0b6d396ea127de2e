import { computed, type ReadonlySignal } from '@preact/signals';
import * as z from 'zod';
import { editionSchema } from '../../core/rules/index.ts';
import { DEFAULT_RULES, type RulesSettings } from './project.ts';
import { edit, project } from './store.ts';

/** Which editions of competition limits there are beside the program's own, which is checked against, and how strictly. */
export const rules: ReadonlySignal<RulesSettings> = computed(() => project.value.rules);

/** Changes them as an undo step. */
export function changeRules(label: string, change: (rules: RulesSettings) => Partial<RulesSettings>): void {
  edit(label, before => ({ ...before, rules: { ...before.rules, ...change(before.rules) } }));
}

const schema = z.object({
  opened: z.array(z.unknown()).catch([]),
  edition: z.string().nullable().catch(DEFAULT_RULES.edition),
  lowerLevel: z.boolean().catch(DEFAULT_RULES.lowerLevel),
});

/** Settings from a draft; an edition that is none is left out. */
export function rulesFrom(value: unknown): RulesSettings {
  const read = schema.safeParse(value);
  if (!read.success) return DEFAULT_RULES;
  const opened = read.data.opened.flatMap(each => editionSchema.safeParse(each).data ?? []);
  return { ...read.data, opened };
}
