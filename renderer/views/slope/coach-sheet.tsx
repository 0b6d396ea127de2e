import { allInWords, inWords } from '../../state/index.ts';
import './coach-sheet.css';
import type { JSX } from 'preact';
import { GRAVITY, Phase } from '../../../core/run/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { type Explained, explainedAt, hardestRow, leadRun, weakestRow } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { calmClock, pause, seek } from './clock.ts';
import { rowAt } from './skids.ts';

interface Link {
  /** Of its working. */
  readonly key: string;
  readonly label: string;
  readonly measure: MeasureName;
  value(of: Explained): number;
}

const sideOf = ({ moment }: Explained) => (moment.edge < 0 ? -1 : 1);

/** From the edge angle on, in the order each follows from the one before. */
const LINKS: readonly Link[] = [
  {
    key: 'run.radius',
    label: 'Turn radius',
    measure: 'radius',
    value: ({ moment }) => Math.abs(1 / moment.curvature),
  },
  {
    key: 'run.sideways',
    label: 'Sideways push (× body weight)',
    measure: 'number',
    value: of => (sideOf(of) * of.moment.sideways) / GRAVITY,
  },
  { key: 'run.lean', label: 'Lean to balance', measure: 'angle', value: of => sideOf(of) * of.moment.lean },
  { key: 'run.hold', label: 'Grip to spare', measure: 'angle', value: ({ moment }) => moment.hold },
  { key: 'run.load', label: 'Load', measure: 'force', value: ({ moment }) => moment.load },
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
    <section class="coach" aria-label="Why: from edge angle to grip">
      <header>
        <h2>
          {run.pair.name} at {track.t[row]!.toFixed(1)} s
        </h2>
        <button type="button" onClick={go(weakestRow(track))}>
          Go to weakest grip
        </button>
        <button type="button" onClick={go(hardestRow(track))}>
          Go to greatest load
        </button>
      </header>
      {explained ? (
        <ChainAndWords explained={explained} slides={track.phase[row] === Phase.Slipping} />
      ) : (
        <NoTurn />
      )}
    </section>
  );
}

function ChainAndWords(props: { readonly explained: Explained; readonly slides: boolean }): JSX.Element {
  const { explained, slides } = props;
  const { words, chain, moment } = explained;
  return (
    <>
      <ol class="chain">
        <li>
          <Reading label="Edge angle" measure="angle" size="small" value={Math.abs(moment.edge)} />
        </li>
        {LINKS.map(link => {
          const upTo = chain.findIndex(each => each.key === link.key);
          return (
            <li key={link.key}>
              <Reading
                label={link.label}
                measure={link.measure}
                size="small"
                value={link.value(explained)}
                note={link.key === 'run.hold' && slides ? 'slides' : undefined}
                working={() => chain.slice(0, upTo + 1).reverse()}
              />
            </li>
          );
        })}
      </ol>
      <div class="coach-words">
        <p class="coach-verdict">{inWords(words.verdict)}</p>
        <p>{allInWords(words.stance)}</p>
        {words.changes.length > 0 && <h3>What to change</h3>}
        <ul>
          {words.changes.map(change => (
            <li key={change.key}>{inWords(change)}</li>
          ))}
        </ul>
      </div>
    </>
  );
}

const NoTurn = (): JSX.Element => (
  <p class="reading-hint">
    The skis change edges here, so there is no turn to explain. Move the time into a turn, or go to one of the
    two moments above.
  </p>
);
