import type { JSX } from 'preact';
import type { Equilibrium } from '../../../core/carve/index.ts';
import type { PlainKey } from '../../../core/language/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { grooveOf } from '../../answers/index.ts';
import { Chart, type Series } from '../../kit/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { t } from '../../state/index.ts';
import { station } from './sheet-state.ts';

interface Trace {
  readonly title: PlainKey;
  readonly label: PlainKey;
  readonly measure: MeasureName;
  readonly zero?: boolean;
  readonly filled?: boolean;
  values(equilibrium: Equilibrium): Float64Array;
}

const TRACES: Record<'pressure' | 'twist', readonly [Trace, Trace]> = {
  pressure: [
    {
      title: 'edge.along.pressure',
      label: 'edge.along.lineLoad',
      measure: 'lineLoad',
      zero: true,
      filled: true,
      values: each => each.lineLoad,
    },
    {
      title: 'edge.along.depth',
      label: 'edge.along.penetration',
      measure: 'deflection',
      zero: true,
      // Where the edge has lifted out of its groove, it is not in the snow.
      values: each => each.penetration.map(depth => Math.max(0, depth)),
    },
  ],
  twist: [
    {
      title: 'edge.along.twist',
      label: 'edge.sheet.twist',
      measure: 'angle',
      zero: true,
      values: each => each.twist,
    },
    {
      title: 'edge.along.edgeAngle',
      label: 'edge.along.localEdgeAngle',
      measure: 'angle',
      values: each => each.localEdgeAngle,
    },
  ],
};

/** Two charts along the ski that share their cursor. */
export function AlongCharts(props: {
  readonly pairs: readonly ChosenPair[];
  readonly sheet: 'pressure' | 'twist';
}): JSX.Element {
  return (
    <>
      {TRACES[props.sheet].map(trace => (
        <Chart
          key={trace.title}
          title={t(trace.title)}
          x={{ label: t('common.fromRearContact'), measure: 'station' }}
          y={{ label: t(trace.label), measure: trace.measure, zero: trace.zero }}
          series={props.pairs.flatMap((pair): Series[] => {
            const solved = grooveOf(pair);
            if (!solved) return [];
            const filled = trace.filled && pair.active;
            return [
              {
                id: pair.id,
                label: pair.name,
                mark: pair.mark,
                x: solved.x,
                y: trace.values(solved),
                filled,
              },
            ];
          })}
          cursor={station}
          empty={t('edge.alongEmpty')}
        />
      ))}
    </>
  );
}
