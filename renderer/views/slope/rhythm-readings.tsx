import { t } from '../../state/index.ts';
import './rhythm-readings.css';
import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import type { Track } from '../../../core/run/index.ts';
import { type MeasureName, sizeOf } from '../../../core/units/index.ts';
import { leadRun, type PairRun, type RhythmAnswer } from '../../answers/index.ts';
import { PairReadings } from '../../kit/index.ts';
import { limitInline, limitName, limitReason, mostWorth } from './limit-words.ts';

interface Answer {
  readonly label: PlainKey;
  readonly measure: MeasureName;
  readonly decimals?: number;
  value(rhythm: RhythmAnswer, track: Track): number;
  /** Keys of the workings that tell how; none where it is read off the path as solved. */
  readonly how?: readonly string[];
}

const MILLISECOND = sizeOf('ms');

const most = (column: Float64Array) => column.reduce((a, v) => Math.max(a, Math.abs(v)), 0);

const ANSWERS: readonly Answer[] = [
  {
    label: 'slope.secondsPerGate',
    measure: 'time',
    decimals: 3,
    value: rhythm => rhythm.secondsPerGate,
    how: ['line.meanSpeed'],
  },
  {
    label: 'line.title.meanSpeed',
    measure: 'speed',
    value: rhythm => rhythm.meanSpeed,
    how: ['line.meanSpeed'],
  },
  { label: 'slope.greatestEdge', measure: 'angle', value: (_, track) => most(track.edge) },
  { label: 'slope.greatestLean', measure: 'angle', value: (_, track) => track.summary.maxLean },
  {
    label: 'slope.greatestLoad',
    measure: 'bodyWeights',
    value: (_, track) => track.summary.maxLoadBodyWeights,
  },
  { label: 'slope.leastRadius', measure: 'radius', value: (_, track) => 1 / most(track.curvature) },
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
          label={t(label)}
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
  const reported = mostWorth(rhythm.limits);
  const [first] = reported;
  return (
    <section class="held-back">
      <h2>{t('slope.whatHoldsBack', { name })}</h2>
      {first ? (
        <p class="reading-hint">
          {t('slope.heldBackMost', {
            limit: limitInline(first.by),
            reason: limitReason(first.by),
          })}
        </p>
      ) : (
        <p class="reading-hint">{t('slope.noLimit')}</p>
      )}
      <table>
        <tbody>
          {reported.map(({ by, seconds }) => (
            <tr key={by}>
              <th scope="row">{limitName(by)}</th>
              <td>
                <span class="worth-bar" style={{ width: `${(100 * seconds) / first!.seconds}%` }} />
              </td>
              <td class="worth">{t('slope.milliseconds', { value: (seconds / MILLISECOND).toFixed(1) })}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
