import type { JSX } from 'preact';
import { formatQuantity } from '../format/index.ts';
import { PairBadge } from '../kit/index.ts';
import {
  activate,
  addEntries,
  adjust,
  choose,
  edit,
  isUnsaved,
  letterFree,
  PAIR_MARKS,
  project,
  type RackEntry,
  removeEntry,
  report,
  unchoose,
  view,
} from '../state/index.ts';
import { saveEntry } from './files.ts';
import { newId } from './new-id.ts';
import { editPair } from './pair-form-host.tsx';
import { radiusOf } from './radius.ts';

export function RackRow({ entry }: { entry: RackEntry }): JSX.Element {
  const { pair, id } = entry;
  const place = project.value.chosen.indexOf(id);
  const mark = place >= 0 ? PAIR_MARKS[place]! : null;
  const active = project.value.activeId === id;
  const { system } = view.value;
  const radius = radiusOf(pair);
  const facts = [
    pair.discipline ?? 'other',
    formatQuantity(pair.lengthMm / 1000, 'skiLength', { system, decimals: 0 }).text,
    radius === null ? 'no sidecut' : formatQuantity(radius, 'radius', { system }).text,
  ];
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === ' ') toggle(entry);
    else if (event.key === 'Enter') editPair(id);
    else if (event.key === 'Delete') remove(entry);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <li class={`rack-row${active ? ' active' : ''}`} data-id={id}>
      <input
        type="checkbox"
        checked={mark !== null}
        aria-label={`Choose ${pair.name}`}
        onChange={event => {
          toggle(entry);
          // Refused when all letters are in use: the box goes back to what is true.
          event.currentTarget.checked = project.value.chosen.includes(id);
        }}
      />
      <button
        type="button"
        class="bare rack-name"
        aria-pressed={active}
        onClick={() => select(entry)}
        onKeyDown={onKeyDown}
      >
        <span class="rack-title">
          {mark && <PairBadge mark={mark} />}
          <span class="rack-words">{pair.name}</span>
          {isUnsaved(entry) && (
            <span class="unsaved" title="Unsaved changes">
              ●<span class="sr-only"> unsaved changes</span>
            </span>
          )}
        </span>
        <span class="rack-facts">
          <span>{facts.join(' · ')}</span>
          {pair.demo && <span class="demo">demo data</span>}
          {entry.readOnly && <span class="demo">read-only</span>}
        </span>
      </button>
      {active && (
        <div class="rack-actions">
          <button type="button" class="quiet" onClick={() => editPair(id)}>
            {entry.readOnly ? 'View' : 'Edit'}
          </button>
          <button type="button" class="quiet" onClick={() => duplicate(entry)}>
            Duplicate
          </button>
          <button type="button" class="quiet" onClick={() => void saveEntry(id)}>
            Save
          </button>
          <button type="button" class="quiet" onClick={() => remove(entry)}>
            Remove
          </button>
        </div>
      )}
    </li>
  );
}

/** A click on a name looks at that pair: the active one if chosen, else in place of the active one. */
function select({ id, pair }: RackEntry): void {
  const { chosen, activeId } = project.value;
  if (chosen.includes(id)) adjust(activate(id));
  else if (chosen.filter(each => each !== null).length <= 1) {
    edit(`Choose ${pair.name}`, now => choose(id)(activeId ? unchoose(activeId)(now) : now));
  } else toggle({ id, pair, saved: null });
}

function toggle({ id, pair }: RackEntry): void {
  if (project.value.chosen.includes(id)) edit(`Let go of ${pair.name}`, unchoose(id));
  else if (letterFree(project.value)) edit(`Choose ${pair.name}`, choose(id));
  else report('Four pairs are chosen already; let one go first.', 'error');
}

function duplicate({ pair }: RackEntry): void {
  const copy = { ...pair, name: `${pair.name} copy`.slice(0, 120), id: undefined };
  edit(`Duplicate ${pair.name}`, now => {
    const entry: RackEntry = { id: newId(), pair: copy, saved: null, inRackFile: now.rackFile !== null };
    const grown = addEntries([entry])(now);
    return letterFree(grown) ? choose(entry.id)(grown) : grown;
  });
}

function remove({ id, pair }: RackEntry): void {
  edit(`Remove ${pair.name}`, removeEntry(id));
  report(`${pair.name} removed from the rack; undo brings it back. Its file is untouched.`);
}
