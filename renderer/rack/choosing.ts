import type { PlainKey } from '../../core/language/index.ts';
import {
  activate,
  choose,
  edit,
  editWithoutUndo,
  isUnsaved,
  letterFree,
  project,
  type RackEntry,
  removeEntry,
  report,
  t,
  unchoose,
} from '../state/index.ts';

type Named = Pick<RackEntry, 'id' | 'pair'>;

/** A click on a name looks at that pair: the active one if chosen, else in place of the active one. */
export function select({ id, pair }: Named): void {
  const { chosen, activeId } = project.value;
  if (chosen.includes(id)) editWithoutUndo(activate(id));
  else if (chosen.filter(each => each !== null).length <= 1) {
    edit(t('rack.choose', { name: pair.name }), now => choose(id)(activeId ? unchoose(activeId)(now) : now));
  } else toggle({ id, pair });
}

/** Gives the pair a letter, or takes its letter away. */
export function toggle({ id, pair }: Named): void {
  if (project.value.chosen.includes(id)) edit(t('rack.deselectStep', { name: pair.name }), unchoose(id));
  else if (letterFree(project.value)) edit(t('rack.choose', { name: pair.name }), choose(id));
  else report(t('rack.fourChosen'), 'error');
}

export function remove(entry: RackEntry): void {
  const { id, pair } = entry;
  edit(t('rack.removeStep', { name: pair.name }), before => {
    const after = removeEntry(id)(before);
    if (after.chosen.some(each => each !== null)) return after;
    // The pair that comes into its place is looked at, so that the stage does not go empty.
    const at = before.rack.findIndex(entry => entry.id === id);
    const next = after.rack[Math.min(at, after.rack.length - 1)];
    return before.activeId === id && next ? choose(next.id)(after) : after;
  });
  report(`${t('rack.removed', { name: pair.name })} ${t(whereItStands(entry))}`.trimEnd());
}

/** Where a pair that is taken out of the rack stands now, if anywhere. */
function whereItStands(entry: RackEntry): PlainKey {
  const { fileToken, inRackFile, saved } = entry;
  if (inRackFile) return saved === null ? 'rack.inNoFile' : 'rack.staysInRackFile';
  if (fileToken !== undefined) return isUnsaved(entry) ? 'rack.fileAsSaved' : 'rack.fileUntouched';
  return isUnsaved(entry) ? 'rack.inNoFile' : 'rack.asItCame';
}
