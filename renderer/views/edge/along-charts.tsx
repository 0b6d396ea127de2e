import type { JSX } from 'preact';
import type { Equilibrium } from '../../../core/carve/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { grooveOf } from '../../answers/index.ts';
import { Chart, type Series } from '../../kit/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { station } from './sheet-state.ts';

interface Trace {
  readonly title: string;
  readonly label: string;
  readonly measure: MeasureName;
  readonly zero?: boolean;
  readonly filled?: boolean;
  values(equilibrium: Equilibrium): Float64Array;
}

const TRACES: Record<'pressure' | 'twist', readonly [Trace, Trace]> = {
  pressure: [
    {
      title: 'Pressure along the edge',
      label: 'Line load',
      measure: 'lineLoad',
      zero: true,
      filled: true,
      values: each => each.lineLoad,
    },
    {
      title: 'Depth in the snow',
      label: 'Penetration',
      measure: 'deflection',
      zero: true,
      // Where the edge has lifted out of its groove, it is not in the snow.
      values: each => each.penetration.map(depth => Math.max(0, depth)),
    },
  ],
  twist: [
    {
      title: 'Twist along the ski',
      label: 'Twist',
      measure: 'angle',
      zero: true,
      values: each => each.twist,
    },
    {
      title: 'Edge angle along the ski',
      label: 'Local edge angle',
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
          title={trace.title}
          x={{ label: 'From rear contact', measure: 'station' }}
          y={{ label: trace.label, measure: trace.measure, zero: trace.zero }}
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
          empty="A pair with a bending stiffness draws its line here."
        />
      ))}
    </>
  );
}
