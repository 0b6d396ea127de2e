import { type Bendable, bendable, type Modes, useWork } from '../../answers/index.ts';
import { chosenPairs } from '../../state/index.ts';

/** Modes by rack id of all `pairs`; the last known ones while new ones are worked out; null before the first. */
export function useModes(
  pairs: readonly Bendable[],
  clamped: boolean,
): { readonly found: ReadonlyMap<string, Modes> | null; readonly error: string | null } {
  const held = clamped ? 'boot held' : 'free';
  const { value, error } = useWork(
    'modes',
    'Working out the modes',
    () => {
      const skis = bendable(chosenPairs.value).map(({ id, ski }) => ({ id, ski }));
      return skis.length > 0 ? { skis, clamped } : null;
    },
    `modes ${held}`,
  ).value;
  const found = new Map(value?.filter(each => each.clamped === clamped).map(each => [each.id, each]));
  return { found: pairs.every(({ id }) => found.has(id)) ? found : null, error };
}
