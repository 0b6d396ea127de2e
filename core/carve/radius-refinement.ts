import type { GridSurface } from './grid-surface.ts';

/** κ cosθ (1/m), the twists of tip and tail (rad) and the wall's ratio (m²/√N) at one point of a radius table. */
export type TablePoint = readonly [bentness: number, twistTip: number, twistTail: number, wallRatio: number];

/**
 * A cell of the table resolved more finely: halved, or small enough to be even between its corners. Plain data,
 * so that it passes between threads.
 */
export type FinerCell =
  | {
      /** What is halved; edge angles evenly, loads in equal ratios. */
      readonly along: 'edge' | 'load';
      readonly below: FinerCell;
      readonly above: FinerCell;
    }
  | {
      /** Corners: low edge and low load, low edge and high load, high edge and low load, high and high. */
      readonly corners: readonly [TablePoint, TablePoint, TablePoint, TablePoint];
      /** As small as parts get, and the radius still changes too much across it to be interpolated. */
      readonly steep: boolean;
    };

/** Finest parts a cell is shared into, each way: 0.8 degrees by 3.5 % of the load on the default grid. */
const EDGE_PARTS = 4;
const LOAD_PARTS = 8;
/** Miss of the interpolation at a midpoint that calls for halving, of the value. */
const MISS = 0.003;
/** Disagreement of neighbouring parabolas at the middle of a cell that calls for a look, of the value. */
const DOUBT = 0.003;
/** The same where only one parabola reaches the middle, for want of points beyond. */
const BORDER_DOUBT = 0.001;
/** Change along a side of a smallest part from which it counts as steep, of the value. */
const STEEP = 0.02;
/** Miss at the middle of a smallest part from which it counts as steep, of the value. */
const STEEP_MISS = 0.004;

/** Row-major indices (in cells) of the cells across which the values may not run smoothly. */
export function doubtfulCells(u: Float64Array, w: Float64Array, values: Float64Array): number[] {
  const rows = u.length;
  const columns = w.length;
  const doubtful: number[] = [];
  for (let i = 0; i + 1 < rows; i++) {
    for (let j = 0; j + 1 < columns; j++) {
      const a = i * columns + j;
      const worst = Math.max(
        disagreement(w, j, k => values[i * columns + k]),
        disagreement(w, j, k => values[(i + 1) * columns + k]),
        disagreement(u, i, k => values[k * columns + j]),
        disagreement(u, i, k => values[k * columns + j + 1]),
      );
      const border = i === 0 || j === 0 || i + 2 === rows || j + 2 === columns;
      if (worst > (border ? BORDER_DOUBT : DOUBT) * Math.abs(values[a])) doubtful.push(i * (columns - 1) + j);
    }
  }
  return doubtful;
}

/** How far apart the parabolas to either side put the middle of an interval; the nearest two at the border. */
function disagreement(axis: Float64Array, interval: number, value: (k: number) => number): number {
  if (axis.length < 4) return 0;
  const first = Math.min(Math.max(interval - 1, 0), axis.length - 4);
  const secant = (k: number) => (value(k + 1) - value(k)) / (axis[k + 1] - axis[k]);
  const bend = (k: number) => (secant(k) - secant(k - 1)) / (axis[k + 1] - axis[k - 1]);
  const h = axis[interval + 1] - axis[interval];
  return (Math.abs(bend(first + 2) - bend(first + 1)) * h * h) / 4;
}

/**
 * Halves a doubtful cell until interpolation meets the middles of every part's sides; null when the grid's own
 * surface already does. `middle(row, column, byRows, byColumns)` solves at fractional grid indices (which `place` turns
 * into edge angle and log load) midway between two points that many indices to either side, both known by then.
 */
export function refineCell(
  row: number,
  column: number,
  surface: GridSurface,
  middle: (row: number, column: number, byRows: number, byColumns: number) => TablePoint,
  place: (row: number, column: number) => readonly [edgeAngle: number, logLoad: number],
): FinerCell | null {
  const point = (i: number, j: number, di = 0, dj = 0) =>
    middle(row + i / EDGE_PARTS, column + j / LOAD_PARTS, di / EDGE_PARTS, dj / LOAD_PARTS);

  function resolve(i0: number, i1: number, j0: number, j1: number): FinerCell | null {
    const whole = i1 - i0 === EDGE_PARTS && j1 - j0 === LOAD_PARTS;
    const im = (i0 + i1) / 2;
    const jm = (j0 + j1) / 2;
    const corners = [point(i0, j0), point(i0, j1), point(i1, j0), point(i1, j1)] as const;
    const [a, b, c, d] = corners;
    const miss = (i: number, j: number, di: number, dj: number, even: number) => {
      const foreseen = whole ? surface.at(...place(row + i / EDGE_PARTS, column + j / LOAD_PARTS)) : even;
      return Math.abs(foreseen / point(i, j, di, dj)[0] - 1);
    };
    const alongEdges = (j: number, p: TablePoint, q: TablePoint) =>
      miss(im, j, (i1 - i0) / 2, 0, 0.5 * (p[0] + q[0]));
    const alongLoads = (i: number, p: TablePoint, q: TablePoint) =>
      miss(i, jm, 0, (j1 - j0) / 2, 0.5 * (p[0] + q[0]));
    const halve = (along: 'edge' | 'load'): FinerCell =>
      along === 'edge'
        ? { along, below: part(i0, im, j0, j1), above: part(im, i1, j0, j1) }
        : { along, below: part(i0, i1, j0, jm), above: part(i0, i1, jm, j1) };
    const byLoad = j1 - j0 > 1 ? Math.max(alongLoads(i0, a, b), alongLoads(i1, c, d)) : 0;
    const byEdge = i1 - i0 > 1 ? Math.max(alongEdges(j0, a, c), alongEdges(j1, b, d)) : 0;
    if (byLoad > MISS || byEdge > MISS) return halve(byLoad >= byEdge ? 'load' : 'edge');
    const centre = 0.25 * (a[0] + b[0] + c[0] + d[0]);
    const smallest = i1 - i0 === 1 && j1 - j0 === 1;
    const byCentre = miss(im, jm, (i1 - i0) / 2, (j1 - j0) / 2, centre);
    if (byCentre > MISS && !smallest) return halve(i1 - i0 > 1 && 2 * (i1 - i0) >= j1 - j0 ? 'edge' : 'load');
    if (whole) return null;
    const alongLoad = Math.max(change(a, b), change(c, d));
    const alongEdge = Math.max(change(a, c), change(b, d));
    return {
      corners,
      steep:
        byCentre > STEEP_MISS || (j1 - j0 === 1 && alongLoad > STEEP) || (i1 - i0 === 1 && alongEdge > STEEP),
    };
  }

  const part = (i0: number, i1: number, j0: number, j1: number) => resolve(i0, i1, j0, j1) as FinerCell;
  return resolve(0, EDGE_PARTS, 0, LOAD_PARTS);
}

const change = (a: TablePoint, b: TablePoint) => Math.abs(b[0] / a[0] - 1);

/** The smallest part of a finer cell holding shares of it along edge and load, and the shares s, t of that part. */
export function partAt(cell: FinerCell, edgeShare: number, loadShare: number) {
  let s = edgeShare;
  let t = loadShare;
  let part = cell;
  while ('along' in part) {
    const share = part.along === 'edge' ? s : t;
    const within = share < 0.5 ? 2 * share : 2 * share - 1;
    if (part.along === 'edge') s = within;
    else t = within;
    part = share < 0.5 ? part.below : part.above;
  }
  return { part, s, t };
}
