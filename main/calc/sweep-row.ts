import { type GrooveSolver, grooveSolver } from '../../core/carve/index.ts';
import { fieldsOf, inSi, rowOf, USUAL } from '../../core/conditions/index.ts';
import { bendTest } from '../../core/flex/index.ts';
import { type Pair, type Ski, skiOf } from '../../core/pair/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { DEGREE, MM } from '../../core/units/index.ts';
import { say } from '../host/index.ts';
import { rangeOf } from './condition-options.ts';
import { answered, asking, InputFault } from './fault.ts';
import { carvingSkiOf, groovePoint } from './groove-point.ts';
import type { Range } from './option.ts';
import { rounded } from './quantity.ts';
import type { Cell } from './table.ts';
import { type Axis, changedPair, valuesAt } from './vary.ts';

const CARVE = fieldsOf('edge', 'snow');

/** What each question may vary beside the pair's own numbers: what is accepted, and the usual value. */
export const questions = {
  shape: {
    options: {},
    columns: ['radiusM', 'sidecutDepthMm', 'circleRadiusM', 'fittedRadiusM', 'taperDeg'],
  },
  bend: {
    options: { load: { ...rangeOf('benchLoadN'), usual: USUAL.benchLoadN } },
    columns: ['springNPerMm', 'deflectionMm', 'firstTouchN', 'flattenN'],
  },
  carve: {
    options: {
      ...Object.fromEntries(
        // The ski may be varied as well; how far `fore` goes is asked row by row.
        CARVE.map(field => [rowOf(field).option, { ...rangeOf(field), usual: USUAL[field] }]),
      ),
    },
    columns: [
      'cosineRadiusM',
      'turnRadiusM',
      'wholeRadiusM',
      'maxPenetrationMm',
      'twistTipDeg',
      'twistTailDeg',
      'rearRadiusM',
      'frontRadiusM',
    ],
  },
} as const;

export type Question = keyof typeof questions;

/** The options of a question, by name. */
export const optionsOf = (ask: Question): Readonly<Record<string, Range & { readonly usual: number }>> =>
  questions[ask].options;

export interface Sweep {
  readonly pair: Pair;
  readonly axes: readonly Axis[];
  readonly ask: Question;
  /** The question's options that are not varied. */
  readonly fixed: Readonly<Record<string, number>>;
}

/**
 * Answers rows one after another. What can be kept from row to row (the ski and its solver) is kept while only
 * the question changes. A row that cannot be answered says why in its last cell.
 */
export function sweepRows({ pair, axes, ask, fixed }: Sweep): (row: number) => Cell[] {
  const own = optionsOf(ask);
  const usual = Object.fromEntries(Object.entries(own).map(([name, option]) => [name, option.usual]));
  const cells: (ski: Ski, asked: Record<string, number>) => (number | null)[] = {
    shape: shapeCells,
    bend: bendCells,
    carve: carveCells(),
  }[ask];
  let key = '';
  let ski: Ski | null = null;
  return row => {
    const values = valuesAt(axes, row);
    const changes = new Map<string, number>();
    const asked: Record<string, number> = { ...usual, ...fixed };
    axes.forEach(({ field }, i) => {
      if (Object.hasOwn(own, field)) asked[field] = values[i];
      else changes.set(field, values[i]);
    });
    try {
      const wanted = JSON.stringify([...changes]);
      if (ski === null || key !== wanted) {
        ski = null;
        ski = skiOf(changedPair(pair, changes));
        key = wanted;
      }
      return [...values, ...cells(ski, asked), null];
    } catch (error) {
      if (!(error instanceof InputFault)) throw error;
      return [...values, ...questions[ask].columns.map(() => null), error.message];
    }
  };
}

function shapeCells(ski: Ski): (number | null)[] {
  const { radius, depth, circleRadius, fittedRadius, taper } = sidecut(ski);
  return [radius, depth / MM, circleRadius, fittedRadius, taper / DEGREE].map(rounded);
}

function bendCells(ski: Ski, { load }: Record<string, number>): (number | null)[] {
  const answer = answered(
    ski.name,
    asking(ski.name, () => bendTest(ski, { loads: [load] })),
  );
  return [answer.springNPerMm, answer.curve[0].deflectionMm, answer.firstTouchN, answer.flattenN].map(
    value => (value === null ? null : rounded(value)),
  );
}

function carveCells() {
  let solvedFor: Ski | null = null;
  let solver: GrooveSolver;
  let radius: number;
  return (ski: Ski, asked: Record<string, number>): (number | null)[] => {
    if (solvedFor !== ski) {
      solver = asking(ski.name, () => grooveSolver(carvingSkiOf(ski.name, ski)));
      radius = sidecut(ski).radius;
      solvedFor = ski;
    }
    const said = Object.fromEntries(CARVE.map(field => [field, asked[rowOf(field).option as string]]));
    const answer = solver.solve(inSi(said, CARVE));
    if (!answer.ok) throw new InputFault(say(answer.reason));
    const point = groovePoint(radius, answer);
    return questions.carve.columns.map(column => point[column]);
  };
}
