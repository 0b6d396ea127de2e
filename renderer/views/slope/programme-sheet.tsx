import type { JSX } from 'preact';
import { DEGREE } from '../../../core/units/index.ts';
import { leadPair, leadRun, programmeOf, programmePlan } from '../../answers/index.ts';
import { Chart, Handle, Quantity, type Series } from '../../kit/index.ts';
import { changeSlope, type DrawnPoint, PAIR_MARKS, slope, t } from '../../state/index.ts';

const SAMPLES = 240;
const MOST_POINTS = 25;
const STEEPEST = 80;

function draw(label: string, drawn: readonly DrawnPoint[], key: string | null = null): void {
  changeSlope(label, { drawn }, key);
}

/** Edge angle over time: what the skier is told to do. Drawn programmes have a handle at every point. */
export function ProgrammeSheet(): JSX.Element {
  const { drawn: points, programme } = slope.value;
  const isDrawn = programme === 'drawn';
  const step = points[1]!.at - points[0]!.at;
  const setStep = (seconds: number) => {
    draw(
      t('slope.pointSpacing'),
      points.map((point, i) => ({ ...point, at: Number((i * seconds).toFixed(3)) })),
      t('slope.drawnStep'),
    );
  };
  const add = () => {
    const last = points.at(-1)!;
    const turn = points.at(-2)!.deg > 0 ? -45 : 45;
    draw('Add a turn', [...points, { at: last.at + step, deg: turn }, { at: last.at + 2 * step, deg: 0 }]);
  };
  return (
    <div class="programme-sheet">
      <Chart
        title={t('slope.edgeOverTime')}
        x={{ label: t('slope.time'), measure: 'time' }}
        y={{
          label: t('slope.edgeAxis'),
          measure: 'angleDeg',
          zero: true,
          ...(isDrawn ? { domain: [-STEEPEST, STEEPEST] as const } : {}),
        }}
        series={seriesOf()}
        empty={t('slope.programmeEmpty')}
      >
        {plot =>
          isDrawn
            ? points.map((point, i) => (
                <Handle
                  key={point.at}
                  label={t('slope.edgeAt', { at: point.at.toFixed(1) })}
                  measure="angleDeg"
                  value={point.deg}
                  min={-STEEPEST}
                  max={STEEPEST}
                  step={1}
                  along="y"
                  x={plot.x(point.at)}
                  y={plot.y(point.deg)}
                  invert={plot.y.invert}
                  onInput={deg =>
                    draw(
                      t('slope.edgeAt', { at: point.at.toFixed(1) }),
                      points.map((each, k) => (k === i ? { ...each, deg } : each)),
                      `drawn ${i}`,
                    )
                  }
                />
              ))
            : null
        }
      </Chart>
      {isDrawn ? (
        <div class="toolbar">
          <Quantity
            label={t('slope.pointSpacing')}
            measure="time"
            value={step}
            min={0.2}
            max={2}
            step={0.05}
            onInput={setStep}
          />
          <button type="button" disabled={points.length >= MOST_POINTS} onClick={add}>
            {t('slope.addTurn')}
          </button>
          <button
            type="button"
            disabled={points.length <= 3}
            onClick={() => draw(t('slope.removeLastTurn'), points.slice(0, -2))}
          >
            {t('slope.removeLastTurn')}
          </button>
        </div>
      ) : (
        <p class="reading-hint">
          {programme === 'banked'
            ? t('slope.bankedNoProgramme')
            : programme === 'rhythm'
              ? t('slope.rhythmProgramme')
              : t('slope.drawYourOwn')}
        </p>
      )}
    </div>
  );
}

function seriesOf(): Series[] {
  const mark = leadPair.value?.mark ?? PAIR_MARKS[0]!;
  const plan = programmePlan.value;
  // What has no programme of edge angles is drawn as it came out.
  if (plan.kind === 'banked' || plan.kind === 'rhythm') {
    const run = leadRun.value;
    if (!run) return [];
    return [{ id: 'edge', label: '', mark, x: run.track.t, y: run.track.edge.map(edge => edge / DEGREE) }];
  }
  try {
    const programme = programmeOf(plan);
    if (programme.kind !== 'edge') return [];
    const x = Float64Array.from({ length: SAMPLES + 1 }, (_, i) => (i * programme.end) / SAMPLES);
    return [{ id: 'edge', label: '', mark, x, y: x.map(at => programme.edge(at) / DEGREE) }];
  } catch {
    // The run itself says what is wrong with the programme.
    return [];
  }
}
