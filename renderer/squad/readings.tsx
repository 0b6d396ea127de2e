import type { JSX } from 'preact';
import { dueText } from '../answers/index.ts';
import { printSheet } from '../print/index.ts';
import { editPair } from '../rack/index.ts';
import { edit, extraOf, replacePair, settle, t, withOwner } from '../state/index.ts';
import { owners, selectedRow } from './squad-state.ts';
import { TuneForm } from './tune-form.tsx';
import { TuneLog } from './tune-log.tsx';

/** The pair looked at: owner, what is due, what is odd, its tune log. */
export function SquadReadings(): JSX.Element {
  const row = selectedRow.value;
  if (!row) return <p class="reading-hint">{t('squad.hint')}</p>;
  const { entry, pair, owner, due, odd } = row;
  const wanting = dueText(due);
  const extra = extraOf(pair);
  return (
    <div class="squad-pair" key={entry.id}>
      <h2>{pair.name}</h2>
      <p class={due.due ? 'due' : 'soft'}>
        {wanting ? t('squad.dueNamed', { what: wanting }) : t('squad.nothingDue')}
      </p>
      <label class="squad-field">
        <span>{t('common.owner')}</span>
        <input
          list="squad-owners"
          value={owner}
          disabled={entry.readOnly !== undefined}
          maxLength={120}
          onInput={event =>
            edit(
              t('squad.ownerStep', { name: pair.name }),
              replacePair(entry.id, withOwner(pair, event.currentTarget.value)),
              `owner ${entry.id}`,
            )
          }
          onBlur={settle}
        />
        <datalist id="squad-owners">
          {owners.value.map(each => (
            <option key={each} value={each} />
          ))}
        </datalist>
      </label>
      {odd.length > 0 && (
        <section>
          <h3>{t('squad.lookAgain')}</h3>
          <ul class="odd-list">
            {odd.map(text => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
      <div class="squad-line">
        <button type="button" onClick={() => editPair(entry.id)}>
          {t(entry.readOnly ? 'common.view' : 'common.edit')}
        </button>
        <button type="button" onClick={() => void printSheet(pair.name, entry.id)}>
          {t('frame.sheet')}
        </button>
      </div>
      <TuneForm row={row} />
      <TuneLog tunes={row.tunes} pair={pair} />
      {extra.length > 0 && (
        <section>
          <h3>{t('squad.fromSheet')}</h3>
          <ul>
            {extra.map(([heading, cell]) => (
              <li key={heading}>
                <span class="soft">{heading}</span> {cell}
              </li>
            ))}
          </ul>
        </section>
      )}
      {pair.notes && (
        <section>
          <h3>{t('common.notes')}</h3>
          <p class="soft">{pair.notes}</p>
        </section>
      )}
    </div>
  );
}
