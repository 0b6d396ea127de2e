import './rhythm-readings.css';
import type { JSX } from 'preact';
import type { Track } from '../../../core/run/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { leadRun, type PairRun, type RhythmAnswer } from '../../answers/index.ts';
import { PairReadings } from '../../kit/index.ts';
import { LIMIT_WORDS, mostWorth } from './limit-words.ts';

interface Answer {
  readonly label: string;
  readonly measure: MeasureName;
  readonly decimals?: number;
  value(rhythm: RhythmAnswer, track: Track): number;
  /** Keys of the workings that tell how; none where it is read off the path as solved. */
  readonly how?: readonly string[];
}

const most = (column: Float64Array) => column.reduce((a, v) => Math.max(a, Math.abs(v)), 0);

const ANSWERS: readonly Answer[] = [
  {
    label: 'Seconds a gate',
    measure: 'time',
    decimals: 3,
    value: rhythm => rhythm.secondsPerGate,
    how: ['line.meanSpeed'],
  },
  {
    label: 'Mean speed down the hill',
    measure: 'speed',
    value: rhythm => rhythm.meanSpeed,
    how: ['line.meanSpeed'],
  },
  { label: 'Greatest edge angle', measure: 'angle', value: (_, track) => most(track.edge) },
  { label: 'Greatest lean', measure: 'angle', value: (_, track) => track.summary.maxLean },
  { label: 'Greatest load', measure: 'bodyWeights', value: (_, track) => track.summary.maxLoadBodyWeights },
  { label: 'Least radius', measure: 'radius', value: (_, track) => 1 / most(track.curvature) },
];

const workingsOf = ({ workings }: RhythmAnswer, keys: readonly string[]) =>
  keys.flatMap(key => workings.filter(working => working.key === key));

const rowOf = (run: PairRun) => ({ id: run.pair.id, mark: run.pair.mark, of: run.pair.name });

/** The quickest turn in a few numbers, pair by pair, and what holds the lead back. */
export function RhythmReadings({ found }: { readonly found: readonly PairRun[] }): JSX.Element {
  const lead = leadRun.value!;
  return (
    <>
      {ANSWERS.map(({ label, measure, decimals, value, how }) => (
        <PairReadings
          key={label}
          label={label}
          measure={measure}
          activeId={lead.pair.id}
          rows={found.flatMap(run =>
            run.rhythm
              ? [
                  {
                    ...rowOf(run),
                    value: value(run.rhythm, run.track),
                    decimals,
                    ...(how ? { working: () => workingsOf(run.rhythm!, how) } : {}),
                  },
                ]
              : [],
          )}
        />
      ))}
      <HeldBack name={lead.pair.name} rhythm={lead.rhythm!} />
    </>
  );
}

/** What one per cent more of each limit would save, largest first. */
function HeldBack({ name, rhythm }: { readonly name: string; readonly rhythm: RhythmAnswer }): JSX.Element {
  const told = mostWorth(rhythm.limits);
  const [first] = told;
  return (
    <section class="held-back">
      <h2>What holds {name} back</h2>
      {first ? (
        <p class="reading-hint">
          Most of all {LIMIT_WORDS[first.by].name.toLowerCase()}: {LIMIT_WORDS[first.by].reason}. One per cent
          more would save, a gate:
        </p>
      ) : (
        <p class="reading-hint">No limit of the skier: only the snow and the air.</p>
      )}
      <table>
        <tbody>
          {told.map(({ by, seconds }) => (
            <tr key={by}>
              <th scope="row">{LIMIT_WORDS[by].name}</th>
              <td>
                <span class="worth-bar" style={{ width: `${(100 * seconds) / first!.seconds}%` }} />
              </td>
              <td class="worth">{(1000 * seconds).toFixed(1)} ms</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
