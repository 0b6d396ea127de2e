import type { JSX } from 'preact';
import type { Pair, TuneEntry } from '../../core/pair/index.ts';
import { byLatest, tuneText } from '../answers/index.ts';
import { edit, removeTune, report } from '../state/index.ts';

/** What was done to a pair, latest first. */
export function TuneLog({ tunes, pair }: { tunes: readonly TuneEntry[]; pair: Pair }): JSX.Element {
  return (
    <section>
      <h3>Tune log</h3>
      {tunes.length === 0 && <p class="soft">Nothing logged yet.</p>}
      <ol class="tune-log">
        {byLatest(tunes).map(tune => (
          <li key={`${tune.date} ${tuneText(tune)}`}>
            <time dateTime={tune.date}>{tune.date}</time>
            <span>{tuneText(tune) || 'no details'}</span>
            <button
              type="button"
              class="quiet"
              aria-label={`Take out the entry of ${tune.date}`}
              onClick={() => {
                edit(`Take out a tune entry of ${pair.name}`, removeTune(tune));
                report('Tune entry taken out; undo brings it back.');
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
