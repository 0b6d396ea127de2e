import './rhythm-readings.css';
import type { JSX } from 'preact';
import type { Track } from '../../../core/run/index.ts';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { PairReadings } from '../../kit/index.ts';
import { view } from '../../state/index.ts';
import { LIMIT_WORDS, mostWorth } from './limit-words.ts';
import type { RhythmAnswer } from './run-plan.ts';
import { leadRun, type PairRun } from './runs.ts';

interface Answer {
  readonly label: string;
  readonly measure: MeasureName;
  readonly decimals?: number;
  value(rhythm: RhythmAnswer, track: Track): number;
  working?(run: PairRun): Working;
}

const most = (column: Float64Array) => column.reduce((a, v) => Math.max(a, Math.abs(v)), 0);

const ANSWERS: readonly Answer[] = [
  { label: 'Seconds a gate', measure: 'time', decimals: 3, value: rhythm => rhythm.secondsPerGate },
  {
    label: 'Mean speed down the hill',
    measure: 'speed',
    value: rhythm => rhythm.meanSpeed,
    working: meanSpeedWorking,
  },
  { label: 'Greatest edge angle', measure: 'angle', value: (_, track) => most(track.edge) },
  { label: 'Greatest lean', measure: 'angle', value: (_, track) => track.summary.maxLean },
  { label: 'Greatest load', measure: 'bodyWeights', value: (_, track) => track.summary.maxLoadBodyWeights },
  { label: 'Least radius', measure: 'radius', value: (_, track) => 1 / most(track.curvature) },
];

const rowOf = (run: PairRun) => ({ id: run.pair.id, mark: run.pair.mark, of: run.pair.name });

/** The quickest turn in a few numbers, pair by pair, and what holds the lead back. */
export function RhythmReadings({ found }: { readonly found: readonly PairRun[] }): JSX.Element {
  const lead = leadRun.value!;
  return (
    <>
      {ANSWERS.map(({ label, measure, decimals, value, working }) => (
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
                    ...(working ? { working: () => working(run) } : {}),
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

/** Gates' distance over a gate's time. */
export function meanSpeedWorking({ plan, rhythm }: PairRun): Working {
  const { programme } = plan;
  const spacing = programme.kind === 'rhythm' ? programme.spacing : 0;
  return {
    key: 'rhythm.meanSpeed',
    title: 'Mean speed down the hill',
    symbol: '\\bar v',
    tex: '\\bar v = s / T',
    formula: 's / T',
    inputs: [
      { name: 's', symbol: 's', meaning: 'gates apart down the hill', value: spacing, unit: 'm' },
      {
        name: 'T',
        symbol: 'T',
        meaning: 'least time from gate to gate, as solved',
        value: rhythm!.secondsPerGate,
        unit: 's',
      },
    ],
    result: { value: rhythm!.meanSpeed, unit: 'm/s' },
    note: `With ${formatQuantity(plan.mass, 'massKg', { system: view.peek().system }).text} on the skis. The skis go the longer way round and are faster than this.`,
    source: 'least time of a skier on a leg through even gates, every limit kept; half a period, mirrored',
    status: 'derived',
  };
}
