import type { JSX } from 'preact';
import type { Pair, TuneEntry } from '../../core/pair/index.ts';
import { byLatest, tuneText } from '../answers/index.ts';
import { edit, removeTune, report, t } from '../state/index.ts';

/** What was done to a pair, latest first. */
export function TuneLog({ tunes, pair }: { tunes: readonly TuneEntry[]; pair: Pair }): JSX.Element {
  return (
    <section>
      <h3>{t('squad.tuneLog')}</h3>
      {tunes.length === 0 && <p class="soft">{t('squad.nothingLogged')}</p>}
      <ol class="tune-log">
        {byLatest(tunes).map(tune => (
          <li key={`${tune.date} ${tuneText(tune)}`}>
            <time dateTime={tune.date}>{tune.date}</time>
            <span>{tuneText(tune) || t('squad.noDetails')}</span>
            <button
              type="button"
              class="quiet"
              aria-label={t('squad.removeEntry', { date: tune.date })}
              onClick={() => {
                edit(t('squad.removeEntryStep', { name: pair.name }), removeTune(tune));
                report(t('squad.entryRemoved'));
              }}
            >
              ×
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
