import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { PlainKey, Sentence } from '../../core/language/index.ts';
import { day, type SquadRow } from '../answers/index.ts';
import { Message } from '../rack/index.ts';
import { addTune, type Edit, edit, newId, replacePair, report, t } from '../state/index.ts';
import { shownRows } from './squad-state.ts';
import { readTune, type TuneDraft, type Tuned, type TuneField } from './tune-draft.ts';

const FIELDS = [
  ['side', 'squad.sideField', '87'],
  ['base', 'squad.baseField', '0.5'],
  ['wax', 'squad.waxField', { key: 'squad.waxExample' }],
  ['structure', 'squad.structureField', { key: 'squad.structureExample' }],
  ['note', 'squad.noteField', ''],
] as const satisfies readonly (readonly [TuneField, PlainKey, example: string | Sentence])[];

/** Logs a tune for the pair looked at, or for every pair the table shows at once. */
export function TuneForm({ row }: { row: SquadRow }): JSX.Element {
  const empty = (): TuneDraft => ({ date: day.value, side: '', base: '', wax: '', structure: '', note: '' });
  const [draft, setDraft] = useState(empty);
  const [messages, setMessages] = useState<Partial<Record<TuneField, string>>>({});
  const [everyone, setEveryone] = useState(false);
  const shown = shownRows.value;
  const type = (field: TuneField, text: string) => {
    setDraft({ ...draft, [field]: text });
    setMessages({});
  };
  const add = (event: Event) => {
    event.preventDefault();
    const read = readTune(draft, day.value);
    if (!read.ok) {
      setMessages(read.messages);
      return;
    }
    const rows = (everyone && shown.length > 0 ? shown : [row]).filter(each => !each.entry.readOnly);
    if (rows.length === 0) {
      report(t('squad.nothingLoggedWhy', { why: row.entry.readOnly ?? t('squad.noPairShown') }), 'error');
      return;
    }
    const name = rows.length === 1 ? rows[0]!.pair.name : t('common.pairs', { count: rows.length });
    edit(
      t('squad.tuneStep', { name }),
      rows
        .map(each => logged(each, read.done))
        .reduce<Edit>(
          (all, one) => now => one(all(now)),
          now => now,
        ),
    );
    report(t('squad.logged', { name }));
    setDraft({ ...empty(), date: draft.date });
  };
  return (
    <form class="tune-form" onSubmit={add}>
      <h3>{t('squad.logTune')}</h3>
      <label class="squad-field">
        <span>{t('squad.date')}</span>
        <input
          type="date"
          value={draft.date}
          max={day.value}
          onInput={event => type('date', event.currentTarget.value)}
        />
        <Message text={messages.date} />
      </label>
      {FIELDS.map(([field, label, example]) => (
        <label key={field} class={`squad-field ${field}`}>
          <span>{t(label)}</span>
          <input
            value={draft[field]}
            placeholder={typeof example === 'string' ? example : t(example.key)}
            autoComplete="off"
            inputMode={field === 'side' || field === 'base' ? 'decimal' : undefined}
            aria-invalid={messages[field] !== undefined}
            onInput={event => type(field, event.currentTarget.value)}
          />
          <Message text={messages[field]} />
        </label>
      ))}
      <label class="tune-for">
        <input
          type="checkbox"
          checked={everyone && shown.length > 0}
          disabled={shown.length === 0}
          onChange={event => setEveryone(event.currentTarget.checked)}
        />
        {t('squad.forAll', { count: shown.length })}
      </label>
      <button type="submit">{t('squad.addToLog')}</button>
    </form>
  );
}

/** The entry goes into the log, and angles put on the edges go into the pair as well. */
const logged =
  ({ entry }: SquadRow, done: Tuned): Edit =>
  project => {
    const { sideAngleDeg, baseBevelDeg } = done;
    const withEntry = addTune(entry.id, done, newId())(project);
    if (sideAngleDeg === undefined && baseBevelDeg === undefined) return withEntry;
    const pair = withEntry.rack.find(each => each.id === entry.id)!.pair;
    const edges = {
      ...pair.edges,
      ...(sideAngleDeg === undefined ? {} : { sideAngleDeg }),
      ...(baseBevelDeg === undefined ? {} : { baseBevelDeg }),
    };
    return replacePair(entry.id, { ...pair, edges })(withEntry);
  };
