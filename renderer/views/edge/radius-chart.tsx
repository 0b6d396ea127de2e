import { useSignal } from '@preact/signals';
import { line } from 'd3';
import type { JSX } from 'preact';
import { cosineRadius, tableRadius } from '../../../core/carve/index.ts';
import { DEGREE, formatQuantity } from '../../../core/units/index.ts';
import {
  askedLoad,
  LEAST_EDGE,
  MOST_EDGE,
  radiusOf,
  type TableShown,
  tableShown,
  turnOf,
} from '../../answers/index.ts';
import { conditionProps, TableProgress } from '../../controls/index.ts';
import { Chart, Handle, type Plot, type Series } from '../../kit/index.ts';
import { type ChosenPair, conditions, t } from '../../state/index.ts';

const ANGLES = Float64Array.from({ length: 74 }, (_, at) => LEAST_EDGE + at);

const ruleOf = (sidecut: number) => ANGLES.map(degrees => cosineRadius(sidecut, degrees * DEGREE));

/** Turn radius against edge angle: the bent ski a full line, the cosine rule dotted beside it. */
export function RadiusChart(props: {
  readonly pairs: readonly ChosenPair[];
  readonly active: ChosenPair;
}): JSX.Element {
  const cursor = useSignal<number | null>(null);
  const tables = props.pairs.map(tableShown);
  const rules = props.pairs.flatMap(pair => {
    const sidecut = radiusOf(pair.pair);
    return sidecut === null ? [] : [{ pair, y: ruleOf(sidecut) }];
  });
  const own = rules.find(({ pair }) => pair.id === props.active.id);
  const series = [
    ...(own ? [{ id: 'rule', label: t('compare.rule'), x: ANGLES, y: own.y, context: true }] : []),
    ...props.pairs.flatMap((pair, at) => bentSeries(pair, tables[at]!)),
  ];
  const reach = Math.max(0, ...rules.map(({ y }) => y[0]!));
  return (
    <Chart
      title={t('edge.turnRadius')}
      description={t('edge.radiusDescription')}
      x={{ label: t('condition.edge'), measure: 'angleDeg', domain: [0, MOST_EDGE] }}
      y={{ label: t('edge.radiusAxis'), measure: 'radius', zero: true, reach }}
      series={series}
      cursor={cursor}
      tools={<TableProgress tables={tables} />}
      class={tables.some(each => each.stale) ? 'stale' : undefined}
      empty={t('shape.noSidecut')}
      under={plot =>
        rules
          .filter(({ pair }) => pair.id !== props.active.id)
          .map(({ pair, y }) => <RuleLine key={pair.id} plot={plot} y={y} colour={pair.mark.colour} />)
      }
    >
      {plot => <Now pairs={props.pairs} active={props.active} plot={plot} />}
    </Chart>
  );
}

function bentSeries(pair: ChosenPair, { table }: TableShown): Series[] {
  if (!table) return [];
  const load = askedLoad.value;
  const y = ANGLES.map(degrees => tableRadius(table, degrees * DEGREE, load));
  return [{ id: pair.id, label: pair.name, mark: pair.mark, x: ANGLES, y }];
}

function RuleLine({ plot, y, colour }: { plot: Plot; y: Float64Array; colour: string }): JSX.Element {
  const path = line<number>(
    degrees => plot.x(degrees),
    (_, at) => plot.y(y[at]!),
  )(ANGLES);
  return <path class="line context" d={path ?? ''} stroke={colour} stroke-dasharray="2 4" />;
}

/** The turns solved at the present edge angle, there before their lines are; the active pair's is dragged. */
function Now(props: {
  readonly pairs: readonly ChosenPair[];
  readonly active: ChosenPair;
  readonly plot: Plot;
}): JSX.Element {
  const { active, plot } = props;
  const { log: _, decimals: __, ...grip } = conditionProps('edgeDeg');
  const { edgeDeg } = conditions.value;
  const turn = turnOf(active).radius;
  const x = plot.x(Math.min(MOST_EDGE, Math.max(LEAST_EDGE, edgeDeg)));
  const heightOf = (pair: ChosenPair) => {
    const { radius, rule } = turnOf(pair);
    const y = plot.y(radius ?? rule ?? 0);
    return Math.min(plot.height, Math.max(0, y));
  };
  return (
    <g>
      <line class="edge-now" x1={x} x2={x} y1={0} y2={plot.height} />
      {props.pairs
        .filter(pair => pair.id !== active.id && turnOf(pair).solved !== null)
        .map(pair => (
          <circle key={pair.id} cx={x} cy={heightOf(pair)} r={4} fill={pair.mark.colour} />
        ))}
      <Handle
        {...grip}
        along="x"
        x={x}
        y={heightOf(active)}
        text={turn === null ? undefined : formatQuantity(turn, 'radius', { system: plot.system }).text}
        textSide={x > 0.6 * plot.width ? 'left' : 'right'}
        invert={px => plot.x.invert(px)}
      />
    </g>
  );
}
