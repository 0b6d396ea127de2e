import './coach-sheet.css';
import type { JSX } from 'preact';
import { Phase } from '../../../core/run/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { Reading } from '../../kit/index.ts';
import { calmClock, pause, seek } from './clock.ts';
import { explainedAt, hardestRow, leastHoldRow } from './moment.ts';
import { leadRun } from './runs.ts';
import { rowAt } from './skids.ts';

/** The links on the sheet: key of the working, and how the number is shown. */
const LINKS: readonly (readonly [string, string, MeasureName])[] = [
  ['carve.cosineRadius', 'Cosine rule', 'radius'],
  ['run.radius', 'Turn radius', 'radius'],
  ['run.load', 'Load', 'force'],
  ['run.lean', 'Lean', 'angle'],
  ['run.hold', 'Hold left', 'angle'],
];

/** The coach's chain at the time shown, and what would change its answer. */
export function CoachSheet(): JSX.Element | null {
  const run = leadRun.value;
  if (!run) return null;
  const { track } = run;
  const row = rowAt(track, calmClock.value);
  const explained = explainedAt(run, row);
  const go = (to: number) => () => {
    pause();
    seek(track.t[to]!);
  };
  return (
    <section class="coach" aria-label="The coach's chain">
      <header>
        <h2>
          {run.pair.name} at {track.t[row]!.toFixed(1)} s
        </h2>
        <button type="button" onClick={go(leastHoldRow(track))}>
          Go to least hold
        </button>
        <button type="button" onClick={go(hardestRow(track))}>
          Go to greatest load
        </button>
      </header>
      {explained ? (
        <>
          <ol class="chain">
            <li>
              <Reading label="Edge angle" measure="angle" size="small" value={Math.abs(track.edge[row]!)} />
            </li>
            {LINKS.map(([key, label, measure]) => {
              const working = explained.chain.find(each => each.key === key);
              return working ? (
                <li key={key}>
                  <Reading
                    label={label}
                    measure={measure}
                    size="small"
                    value={working.result.value}
                    working={() => working}
                  />
                </li>
              ) : null;
            })}
          </ol>
          {track.phase[row] === Phase.Slipping && (
            <p class="reading-hint">
              While it slips, the path is wider than the arc the edge wants; the radius is that of the path.
            </p>
          )}
          <div class="coach-words">
            <p class="coach-verdict">{explained.words.verdict}</p>
            <p>{explained.words.stance}</p>
            <ul>
              {explained.words.changes.map(text => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          </div>
        </>
      ) : (
        <p class="reading-hint">
          The skis change edges here, so there is no turn to explain. Move the time into a turn, or go to one
          of the two moments above.
        </p>
      )}
    </section>
  );
}
