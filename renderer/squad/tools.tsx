import type { JSX } from 'preact';
import { allRows } from '../answers/index.ts';
import { openFiles } from '../files/index.ts';
import { Segments } from '../kit/index.ts';
import { printDue } from '../print/index.ts';
import { enterRows } from '../rack/index.ts';
import { changeView, chosenPairs, edit, project, setDueAfter, settle } from '../state/index.ts';
import { AS_IN_RACK, NO_OWNER, type Show } from './arrange.ts';
import { importDemo } from './import-demo.ts';
import { saveTable } from './save-table.ts';
import { arrangement, changeArrangement, owners, shownRows } from './squad-state.ts';

/** Search, filters, thresholds and what can be done with the whole squad. */
export function SquadTools(): JSX.Element {
  const by = arrangement.value;
  const rows = allRows.value;
  const shown = shownRows.value;
  const due = rows.filter(row => row.due.due).length;
  const odd = rows.filter(row => row.odd.length > 0).length;
  const filtered = shown.length !== rows.length;
  return (
    <section class="squad-tools" aria-label="Find and filter">
      <div class="squad-line">
        <input
          id="rack-search"
          class="rack-search"
          type="search"
          placeholder={`Find among ${rows.length} pairs`}
          aria-label="Find by name, owner, discipline, length or notes"
          value={by.words}
          onInput={event => changeArrangement({ words: event.currentTarget.value })}
          onKeyDown={event => enterRows(event, '.squad-name')}
        />
        <Choice
          label="Owner"
          value={by.owner}
          options={[
            ['', 'everyone'],
            ...owners.value.map(owner => [owner, owner] as const),
            [NO_OWNER, 'no owner given'],
          ]}
          onInput={owner => changeArrangement({ owner })}
        />
        <Choice
          label="Discipline"
          value={by.discipline}
          options={[['', 'all'], ...['SL', 'GS', 'SG', 'DH', 'other'].map(each => [each, each] as const)]}
          onInput={discipline => changeArrangement({ discipline })}
        />
        <Segments<Show>
          label="Show"
          labelHidden
          value={by.show}
          options={[
            { value: 'all', label: `All ${rows.length}` },
            { value: 'due', label: `Due ${due}` },
            { value: 'odd', label: `Look again ${odd}` },
          ]}
          onInput={show => changeArrangement({ show })}
        />
      </div>
      <div class="squad-line">
        <Days field="edgeDays" label="Edges due after" />
        <Days field="waxDays" label="Wax due after" />
        <span class="squad-gap">
          {filtered && (
            <button
              type="button"
              class="quiet"
              onClick={() => changeArrangement({ ...AS_IN_RACK, sort: by.sort, down: by.down })}
            >
              Show all
            </button>
          )}
        </span>
        <span class="squad-actions">
          <button type="button" disabled={due === 0} onClick={() => void printDue()}>
            Print due list
          </button>
          <button
            type="button"
            disabled={chosenPairs.value.length < 2}
            title="Tick two to four pairs"
            onClick={() => changeView({ page: 'compare' })}
          >
            Compare
          </button>
          <button type="button" title="Back to the questions" onClick={() => changeView({ page: null })}>
            Back
          </button>
        </span>
      </div>
    </section>
  );
}

/** Sheets in and out, under the table. */
export function SquadFiles(): JSX.Element {
  return (
    <div class="squad-line">
      <button type="button" onClick={() => void openFiles('sheet')}>
        Import a sheet…
      </button>
      <button type="button" onClick={importDemo}>
        Demo squad
      </button>
      <button type="button" disabled={shownRows.value.length === 0} onClick={() => void saveTable()}>
        Save as CSV
      </button>
    </div>
  );
}

function Choice(props: {
  label: string;
  value: string;
  options: readonly (readonly [value: string, label: string])[];
  onInput(value: string): void;
}): JSX.Element {
  return (
    <label class="squad-choice">
      <span>{props.label}</span>
      <select value={props.value} onChange={event => props.onInput(event.currentTarget.value)}>
        {props.options.map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}

/** After how many days a care is due again; stays with the rack and can be undone. */
function Days({ field, label }: { field: 'edgeDays' | 'waxDays'; label: string }): JSX.Element {
  return (
    <label class="squad-choice">
      <span>{label}</span>
      <input
        type="number"
        min={1}
        max={365}
        step={1}
        value={project.value.dueAfter[field]}
        onInput={event => {
          const days = event.currentTarget.valueAsNumber;
          if (Number.isInteger(days) && days >= 1 && days <= 365) {
            edit(label, setDueAfter({ [field]: days }), field);
          }
        }}
        onBlur={event => {
          settle();
          event.currentTarget.value = String(project.value.dueAfter[field]);
        }}
      />
      <span>days</span>
    </label>
  );
}
