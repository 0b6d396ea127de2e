import { overhang as lengthBeyond } from '../../core/flex/index.ts';
import { edgeCurve } from '../../core/shape/index.ts';
import { type ChosenPair, perPair, ski } from '../state/index.ts';

/** The edge from above, remembered per pair. */
export const edgeOf = perPair(pair => edgeCurve(ski(pair)));

/** Half the outline, m: stations from the rear contact point and half widths. */
export interface HalfOutline {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

const SAMPLES = 121;

/** Samples of the measured edge between the contact points. */
export const halfOutline = perPair((pair): HalfOutline => {
  const edge = edgeOf(pair);
  const x = Float64Array.from({ length: SAMPLES }, (_, at) => (at / (SAMPLES - 1)) * edge.length);
  return { x, y: x.map(each => edge.halfWidth(each)) };
});

/** Length beyond each contact point, m; the drawing marks both ends as not measured. */
export const overhang = ({ ski }: Pick<ChosenPair, 'ski'>) => lengthBeyond(ski);

/** Maps metres on the ski to px: x along, y across; `across` is px per metre of half width. */
export interface Placing {
  x(along: number): number;
  y(across: number): number;
}

/** The two measured edges as open lines. */
export function edgePath({ x, y }: HalfOutline, place: Placing, side: 1 | -1): string {
  const points: string[] = [];
  for (let at = 0; at < x.length; at++) {
    points.push(`${place.x(x[at]!).toFixed(2)},${place.y(side * y[at]!).toFixed(2)}`);
  }
  return `M${points.join('L')}`;
}

/** Closed path of the measured part. */
export function bodyPath({ x, y }: HalfOutline, place: Placing): string {
  const upper: string[] = [];
  const lower: string[] = [];
  for (let at = 0; at < x.length; at++) {
    const px = place.x(x[at]!).toFixed(2);
    upper.push(`${px},${place.y(y[at]!).toFixed(2)}`);
    lower.unshift(`${px},${place.y(-y[at]!).toFixed(2)}`);
  }
  return `M${upper.join('L')}L${lower.join('L')}Z`;
}

/** The two rounded ends beyond the contact points. */
export function endPaths(pair: ChosenPair, place: Placing): [rear: string, front: string] {
  const { x, y } = halfOutline(pair.pair);
  const { rear, front } = overhang(pair);
  const end = (from: number, half: number, beyond: number, fullness: number) => {
    const side = (sign: 1 | -1) =>
      `${place.x(from + beyond * fullness)},${place.y(sign * half)} ${place.x(from + beyond)},${place.y(sign * half * 0.75)} ${place.x(from + beyond)},${place.y(0)}`;
    const back = `${place.x(from + beyond)},${place.y(-half * 0.75)} ${place.x(from + beyond * fullness)},${place.y(-half)} ${place.x(from)},${place.y(-half)}`;
    return `M${place.x(from)},${place.y(half)}C${side(1)}C${back}`;
  };
  const last = x.length - 1;
  return [end(0, y[0]!, -rear, 0.6), end(x[last]!, y[last]!, front, 0.45)];
}
