import type { JSX } from 'preact';
import { allRows } from '../answers/index.ts';
import { openFiles } from '../files/index.ts';
import { Segments } from '../kit/index.ts';
import { printDue } from '../print/index.ts';
import { enterRows } from '../rack/index.ts';
import {
  changeView,
  chosenPairs,
  DISCIPLINES,
  disciplineText,
  edit,
  project,
  setDueAfter,
  settle,
  t,
} from '../state/index.ts';
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
    <section class="squad-tools" aria-label={t('squad.findAndFilter')}>
      <div class="squad-line">
        <input
          id="rack-search"
          class="rack-search"
          type="search"
          placeholder={t('squad.findAmong', { count: rows.length })}
          aria-label={t('squad.findLabel')}
          value={by.words}
          onInput={event => changeArrangement({ words: event.currentTarget.value })}
          onKeyDown={event => enterRows(event, '.squad-name')}
        />
        <Choice
          label={t('common.owner')}
          value={by.owner}
          options={[
            ['', t('squad.everyone')],
            ...owners.value.map(owner => [owner, owner] as const),
            [NO_OWNER, t('squad.noOwner')],
          ]}
          onInput={owner => changeArrangement({ owner })}
        />
        <Choice
          label={t('common.discipline')}
          value={by.discipline}
          options={[
            ['', t('squad.allDisciplines')],
            ...DISCIPLINES.map(each => [each, disciplineText(each)] as const),
          ]}
          onInput={discipline => changeArrangement({ discipline })}
        />
        <Segments<Show>
          label={t('squad.show')}
          labelHidden
          value={by.show}
          options={[
            { value: 'all', label: t('squad.showAllCount', { count: rows.length }) },
            { value: 'due', label: t('squad.showDue', { count: due }) },
            { value: 'odd', label: t('squad.showOdd', { count: odd }) },
          ]}
          onInput={show => changeArrangement({ show })}
        />
      </div>
      <div class="squad-line">
        <Days field="edgeDays" label={t('squad.edgesDueAfter')} />
        <Days field="waxDays" label={t('squad.waxDueAfter')} />
        <span class="squad-gap">
          {filtered && (
            <button
              type="button"
              class="quiet"
              onClick={() => changeArrangement({ ...AS_IN_RACK, sort: by.sort, down: by.down })}
            >
              {t('squad.showAll')}
            </button>
          )}
        </span>
        <span class="squad-actions">
          <button type="button" disabled={due === 0} onClick={() => void printDue()}>
            {t('squad.printDue')}
          </button>
          <button
            type="button"
            disabled={chosenPairs.value.length < 2}
            title={t('squad.tickPairs')}
            onClick={() => changeView({ page: 'compare' })}
          >
            {t('rack.compare')}
          </button>
          <button type="button" title={t('squad.backHint')} onClick={() => changeView({ page: null })}>
            {t('squad.back')}
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
        {t('squad.importSheet')}
      </button>
      <button type="button" onClick={importDemo}>
        {t('squad.demo')}
      </button>
      <button type="button" disabled={shownRows.value.length === 0} onClick={() => void saveTable()}>
        {t('squad.saveCsv')}
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
      <span>{t('common.days')}</span>
    </label>
  );
}
