import type { JSX } from 'preact';
import { bootMoment, edgeBelowFoot, pushOf } from '../../../core/boot/index.ts';
import { DEGREE } from '../../../core/units/index.ts';
import { type BootOfPair, bootOf } from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { Chart, type Plot, type Series } from '../../kit/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { t } from '../../state/index.ts';
import { HandedOn } from './handed-on.tsx';

/** Angulation drawn, rad: what a skier's hips and knees can do, and some less than none. */
const LEAST = -10 * DEGREE;
const MOST = 50 * DEGREE;
const SAMPLES = 51;

const GAMMA = Float64Array.from({ length: SAMPLES }, (_, i) => LEAST + ((MOST - LEAST) * i) / (SAMPLES - 1));

/** Moment on the boot over angulation, and what the ski hands to the binding at the present one. */
export function BootSheet(props: {
  readonly pairs: readonly ChosenPair[];
  readonly active: ChosenPair;
}): JSX.Element {
  const boots = props.pairs.flatMap(pair => bootOf(pair) ?? []);
  const own = boots.find(({ pair }) => pair.id === props.active.id);
  return (
    <>
      <Chart
        title={t('edge.boot.moment')}
        x={{ label: t('edge.boot.angulation'), measure: 'angle', domain: [LEAST, MOST] }}
        y={{ label: t('edge.boot.axis'), measure: 'moment', zero: true }}
        series={boots.map(momentLine)}
        empty={t('edge.boot.empty')}
        under={plot => <line class="zero-line" x2={plot.width} y1={plot.y(0)} y2={plot.y(0)} />}
      >
        {plot => boots.map(boot => <Present key={boot.pair.id} boot={boot} plot={plot} />)}
      </Chart>
      <div class="hold-side">
        <ConditionControl field="speedKmh" label="condition.speed" />
        <ConditionControl field="bootStiffnessNmPerDeg" />
        {own && <HandedOn boot={own} />}
      </div>
    </>
  );
}

function momentLine(boot: BootOfPair): Series {
  const { pair, question } = boot;
  const edge = edgeBelowFoot(question);
  return {
    id: pair.id,
    label: pair.name,
    mark: pair.mark,
    x: GAMMA,
    y: GAMMA.map(gamma => bootMoment(pushOf(question.normal, gamma), edge, gamma)),
  };
}

function Present({ boot, plot }: { boot: BootOfPair; plot: Plot }): JSX.Element | null {
  const { angulation, moment, solvedMoment } = boot.answer;
  if (angulation < LEAST || angulation > MOST) return null;
  return (
    <circle
      cx={plot.x(angulation)}
      cy={plot.y(solvedMoment ?? moment)}
      r={5}
      fill={boot.pair.mark.colour}
      stroke="var(--surface)"
      stroke-width={1.5}
    />
  );
}
