import { computed } from '@preact/signals';
import { chosenPairs, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { type Bendable, bendable } from './beam.ts';
import type { Modes } from './jobs/flex-jobs.ts';

const skis = computed(() => bendable(chosenPairs.value).map(({ id, ski }) => ({ id, ski })));

const modesWhere = (clamped: boolean) =>
  answer('modes', {
    label: () => t('answers.modes'),
    question: () => (skis.value.length > 0 ? { skis: skis.value, clamped } : null),
  });

const free = modesWhere(false);
const held = modesWhere(true);

/** Modes by rack id of all `pairs`; the last known ones while new ones are worked out; null before the first. */
export function modesOf(
  pairs: readonly Bendable[],
  clamped: boolean,
): { readonly found: ReadonlyMap<string, Modes> | null; readonly error: string | null } {
  const { value, error } = (clamped ? held : free).value;
  const found = new Map(value?.map(each => [each.id, each]));
  return { found: pairs.every(({ id }) => found.has(id)) ? found : null, error };
}
