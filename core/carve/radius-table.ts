import { DEGREE } from '../units/index.ts';
import type { CarveFailure, CarvingSki, Equilibrium } from './groove.ts';
import { type GrooveStart, grooveSolver } from './groove-solver.ts';
import type { Neighbour } from './neighbouring-start.ts';
import { bentness, tableSurface } from './radius-lookup.ts';
import { doubtfulCells, type FinerCell, refineCell, type TablePoint } from './radius-refinement.ts';
import { REBOUND } from './snow-law.ts';
import { wallRatio } from './wall-area.ts';

/**
 * R(edge angle, load) of one ski on one snow, made by solving a grid of equilibria. SI.
 *
 * R has two places no even grid resolves: where the middle of a ski that stood on its ends first comes down
 * (light load, steep edge), and where it breaks out of the groove its tip cuts and cuts its own (heavy load,
 * soft snow). The second is a fold at steep edge angles: the groove jumps from one shape to the other, and R by
 * some ten per cent. Cells there are resolved more finely; the smallest parts across which R still changes by over 2 % are marked.
 */
export interface RadiusTable {
  /** Ascending, rad. */
  readonly edgeAngles: Float64Array;
  /** Ascending, N. */
  readonly loads: Float64Array;
  /** Row-major [edge angle][load], m. */
  readonly radii: Float64Array;
  readonly twistTips: Float64Array;
  readonly twistTails: Float64Array;
  /** ∫ e dx of the groove's wall, m². */
  readonly wallAreas: Float64Array;
  readonly hardness: number;
  /** Cells, by their row-major index, that are resolved more finely than the grid. */
  readonly finer?: ReadonlyMap<number, FinerCell>;
}

export interface RadiusTableOptions {
  /** Edge angles, rad, ascending; 24 from 2 to 75 degrees when absent. */
  readonly edges?: ArrayLike<number>;
  /** Loads, N, ascending; 12 from 200 to 4000 N in equal ratios when absent. */
  readonly loads?: ArrayLike<number>;
  /** Load centre ahead of the boot centre, m. */
  readonly fore?: number;
  /** Rebound of the packed snow, m; `REBOUND` when absent. */
  readonly rebound?: number;
  readonly elements?: number;
  /** Called after each edge angle and each cell resolved more finely with the share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Asked before each edge angle and such cell; true stops the work. */
  readonly cancelled?: () => boolean;
}

/** Share of the work told as done when the grid is; the rest goes to the cells it leaves in doubt. */
const GRID_SHARE = 0.75;
/** More than the parts a cell is shared into, for telling points apart. */
const FINENESS = 64;
/** Change of κ cosθ between two answers up to which the groove between them is taken to be theirs. */
const SAME_GROOVE = 0.02;

const defaultTableEdges = (): Float64Array =>
  Float64Array.from({ length: 24 }, (_, i) => (2 + (73 * i) / 23) * DEGREE);

const defaultTableLoads = (): Float64Array =>
  Float64Array.from({ length: 12 }, (_, i) => 200 * 20 ** (i / 11));

/**
 * Solves the grid, each answer started from its neighbour's; hardness in N/m³. Returns null when cancelled, or
 * the first failure: a table with a hole is no table.
 */
export function buildRadiusTable(
  ski: CarvingSki,
  hardness: number,
  options: RadiusTableOptions = {},
): RadiusTable | CarveFailure | null {
  const edgeAngles = Float64Array.from(options.edges ?? defaultTableEdges());
  const loads = Float64Array.from(options.loads ?? defaultTableLoads());
  const solver = grooveSolver(ski, { elements: options.elements });
  const { fore = 0, rebound = REBOUND } = options;
  const size = edgeAngles.length * loads.length;
  const radii = new Float64Array(size);
  const twistTips = new Float64Array(size);
  const twistTails = new Float64Array(size);
  const wallAreas = new Float64Array(size);
  const rows = edgeAngles.length;
  const columns = loads.length;
  const answers: Equilibrium[] = [];
  for (let i = 0; i < rows; i++) {
    if (options.cancelled?.()) return null;
    for (let j = 0; j < columns; j++) {
      const conditions = { edgeAngle: edgeAngles[i], load: loads[j], hardness, fore, rebound };
      const at = i * columns + j;
      const answer = solver.solve(conditions, { from: foreseen(answers, i, j, columns) });
      if (!answer.ok) return answer;
      answers.push(answer);
      radii[at] = answer.turnRadius;
      twistTips[at] = answer.twistTip;
      twistTails[at] = answer.twistTail;
      wallAreas[at] = answer.wallArea;
    }
    options.onProgress?.(((i + 1) / rows) * GRID_SHARE);
  }
  const table = { edgeAngles, loads, radii, twistTips, twistTails, wallAreas, hardness };
  if (rows < 2 || columns < 2) {
    options.onProgress?.(1);
    return table;
  }
  const solve = (edgeAngle: number, load: number, start: GrooveStart) =>
    solver.solve({ edgeAngle, load, hardness, fore, rebound }, start);
  const finer = resolve(table, answers, solve, options);
  return finer === null || 'ok' in finer ? finer : { ...table, finer };
}

/** What the answers so far let one expect at row i, column j: a parabola up the column, or the parallelogram. */
function foreseen(answers: readonly Equilibrium[], i: number, j: number, columns: number): Neighbour[] {
  const near = (up: number, left: number, share: number): Neighbour => ({
    answer: answers[(i - up) * columns + j - left],
    share,
  });
  if (i > 2) return [near(1, 0, 3), near(2, 0, -3), near(3, 0, 1)];
  if (i > 0 && j > 0) return [near(1, 0, 1), near(0, 1, 1), near(1, 1, -1)];
  if (i > 0) return [near(1, 0, 1)];
  return j > 0 ? [near(0, 1, 1)] : [];
}

/** Resolves the cells the grid leaves in doubt; neighbours share the points on their common side. */
function resolve(
  table: RadiusTable,
  grid: readonly Equilibrium[],
  solve: (edgeAngle: number, load: number, start: GrooveStart) => Equilibrium | CarveFailure,
  options: RadiusTableOptions,
): ReadonlyMap<number, FinerCell> | CarveFailure | null {
  const { edgeAngles, loads } = table;
  const columns = loads.length;
  const surface = tableSurface(table);
  const logLoads = loads.map(Math.log);
  const answers = new Map<number, Equilibrium>();
  let failure: CarveFailure | null = null;

  const between = (axis: Float64Array, index: number) => {
    const i = Math.min(Math.floor(index), axis.length - 2);
    return axis[i] + (index - i) * (axis[i + 1] - axis[i]);
  };
  const place = (row: number, column: number) =>
    [between(edgeAngles, row), between(logLoads, column)] as const;
  const key = (row: number, column: number) => (row * columns * FINENESS + column) * FINENESS;
  for (let at = 0; at < grid.length; at++) answers.set(key(Math.floor(at / columns), at % columns), grid[at]);

  function middle(row: number, column: number, byRows: number, byColumns: number): TablePoint {
    let answer = answers.get(key(row, column));
    if (!answer) {
      const ends = [
        answers.get(key(row - byRows, column - byColumns)),
        answers.get(key(row + byRows, column + byColumns)),
      ];
      const from = ends.flatMap(end => (end ? [{ answer: end, share: 0.5 }] : []));
      const bent = from.map(({ answer: { turnRadius, conditions } }) =>
        bentness(turnRadius, conditions.edgeAngle),
      );
      const sameGroove = from.length === 2 && Math.abs(bent[0] / bent[1] - 1) < SAME_GROOVE;
      const [edgeAngle, logLoad] = place(row, column);
      const solved = solve(edgeAngle, Math.exp(logLoad), { from, sameGroove });
      if (!solved.ok) {
        failure = solved;
        return [Number.NaN, 0, 0, 0];
      }
      answer = solved;
      answers.set(key(row, column), answer);
    }
    const { turnRadius, twistTip, twistTail, wallArea, conditions } = answer;
    return [
      bentness(turnRadius, conditions.edgeAngle),
      twistTip,
      twistTail,
      wallRatio(wallArea, conditions.edgeAngle, conditions.load),
    ];
  }

  const finer = new Map<number, FinerCell>();
  // A break that a cell turns out to hold may go on in its neighbours: the list grows as it is worked through.
  const doubtful = new Set(doubtfulCells(edgeAngles, logLoads, surface.values));
  let done = 0;
  let reported = GRID_SHARE;
  for (const index of doubtful) {
    if (options.cancelled?.()) return null;
    const row = Math.floor(index / (columns - 1));
    const column = index % (columns - 1);
    const cell = refineCell(row, column, surface.bentness, middle, place);
    if (failure) return failure;
    if (cell) {
      finer.set(index, cell);
      if (row > 0) doubtful.add(index - columns + 1);
      if (row + 2 < edgeAngles.length) doubtful.add(index + columns - 1);
      if (column > 0) doubtful.add(index - 1);
      if (column + 2 < columns) doubtful.add(index + 1);
    }
    done++;
    reported = Math.max(reported, GRID_SHARE + (1 - GRID_SHARE) * (done / doubtful.size) ** 2);
    options.onProgress?.(reported);
  }
  options.onProgress?.(1);
  return finer;
}
