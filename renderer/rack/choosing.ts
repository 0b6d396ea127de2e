import {
  activate,
  adjust,
  choose,
  edit,
  letterFree,
  project,
  type RackEntry,
  removeEntry,
  report,
  unchoose,
} from '../state/index.ts';

type Named = Pick<RackEntry, 'id' | 'pair'>;

/** A click on a name looks at that pair: the active one if chosen, else in place of the active one. */
export function select({ id, pair }: Named): void {
  const { chosen, activeId } = project.value;
  if (chosen.includes(id)) adjust(activate(id));
  else if (chosen.filter(each => each !== null).length <= 1) {
    edit(`Choose ${pair.name}`, now => choose(id)(activeId ? unchoose(activeId)(now) : now));
  } else toggle({ id, pair });
}

/** Gives the pair a letter, or takes its letter away. */
export function toggle({ id, pair }: Named): void {
  if (project.value.chosen.includes(id)) edit(`Let go of ${pair.name}`, unchoose(id));
  else if (letterFree(project.value)) edit(`Choose ${pair.name}`, choose(id));
  else report('Four pairs are chosen already; let one go first.', 'error');
}

export function remove({ id, pair }: Named): void {
  edit(`Remove ${pair.name}`, before => {
    const after = removeEntry(id)(before);
    if (after.chosen.some(each => each !== null)) return after;
    // The pair that comes into its place is looked at, so that the stage does not go empty.
    const at = before.rack.findIndex(entry => entry.id === id);
    const next = after.rack[Math.min(at, after.rack.length - 1)];
    return before.activeId === id && next ? choose(next.id)(after) : after;
  });
  report(`${pair.name} removed from the rack; undo brings it back. Its file is untouched.`);
}
