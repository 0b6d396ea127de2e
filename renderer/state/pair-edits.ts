import { checkPair, type Pair } from '../../core/pair/index.ts';
import { replacePair } from './rack-edits.ts';
import { report } from './status.ts';
import { edit, project } from './store.ts';
import { inWords } from './words.ts';

/**
 * Changes fields of a pair as one undo step (a drag's moves share `key`). A change that would make the
 * pair invalid is refused and said in the foot; the last good pair stays. Returns whether it was made.
 */
export function changePair(
  id: string,
  label: string,
  change: Partial<Pair>,
  key: string | null = null,
): boolean {
  const entry = project.value.rack.find(each => each.id === id);
  if (!entry) return false;
  if (entry.readOnly) {
    report(`${entry.pair.name}: ${entry.readOnly}`, 'error');
    return false;
  }
  const next = { ...entry.pair, ...change } as Pair;
  const [problem] = checkPair(next);
  if (problem) {
    report(inWords(problem), 'error');
    return false;
  }
  edit(label, replacePair(id, next), key);
  return true;
}
