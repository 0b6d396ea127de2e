import { useSignal } from '@preact/signals';
import { line } from 'd3';
import type { JSX } from 'preact';
import { cosineRadius, tableRadius } from '../../../core/carve/index.ts';
import { Chart, Handle, type Plot, type Series } from '../../kit/index.ts';
import { radiusOf } from '../../rack/radius.ts';
import { type ChosenPair, changeConditions, conditions } from '../../state/index.ts';
import { asked, DEGREE, LEAST_EDGE, MOST_EDGE } from './asked.ts';
import { TableProgress } from './table-progress.tsx';
import { type TableShown, tableShown } from './tables.ts';

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
    ...(own ? [{ id: 'rule', label: 'rule', x: ANGLES, y: own.y, context: true }] : []),
    ...props.pairs.flatMap((pair, at) => bentSeries(pair, tables[at]!)),
  ];
  return (
    <Chart
      title="Radius against edge angle"
      description="Turn radius against edge angle: bent ski and cosine rule"
      x={{ label: 'Edge angle', measure: 'angleDeg', domain: [0, MOST_EDGE] }}
      y={{ label: 'Turn radius (dotted: cosine rule)', measure: 'radius', zero: true }}
      series={series}
      cursor={cursor}
      tools={<TableProgress tables={tables} />}
      class={tables.some(each => each.stale) ? 'stale' : undefined}
      empty="The edge has no sidecut: the waist must be narrower than tip and tail."
      under={plot =>
        rules
          .filter(({ pair }) => pair.id !== props.active.id)
          .map(({ pair, y }) => <RuleLine key={pair.id} plot={plot} y={y} colour={pair.mark.colour} />)
      }
    >
      {plot => <EdgeHandle plot={plot} />}
    </Chart>
  );
}

function bentSeries(pair: ChosenPair, { table }: TableShown): Series[] {
  if (!table) return [];
  const { load } = asked.value;
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

/** The present edge angle on its axis, to be dragged. */
function EdgeHandle({ plot }: { plot: Plot }): JSX.Element {
  const { edgeDeg } = conditions.value;
  const x = plot.x(edgeDeg);
  return (
    <g>
      <line class="edge-now" x1={x} x2={x} y1={0} y2={plot.height} />
      <Handle
        label="Edge angle"
        measure="angleDeg"
        value={edgeDeg}
        min={LEAST_EDGE}
        max={MOST_EDGE}
        step={1}
        along="x"
        x={x}
        y={plot.height}
        invert={px => plot.x.invert(px)}
        onInput={value => changeConditions('Edge angle', { edgeDeg: value }, 'edgeDeg')}
      />
    </g>
  );
}
