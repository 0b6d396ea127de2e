import { checkPair, type Pair } from '../../core/pair/index.ts';
import { say } from '../host/index.ts';
import { InputFault } from './fault.ts';
import { numberIn, type Range } from './option.ts';
import { t } from './words.ts';

/** One thing varied: a number of the pair file by its path, or one of the question's own options. */
export interface Axis {
  readonly field: string;
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** A field's own range is asked of the pair, row by row. */
const ANY: Range = { unit: '', from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };

const MOST_ROWS = 1_000_000;

/**
 * `FIELD=FROM:TO:STEP`, the end included where a step falls on it.
 *
 * @throws InputFault when the text is of another form
 */
export function readAxis(text: string): Axis {
  const found = /^([A-Za-z][\w.[\]]*)=([^:]+):([^:]+):([^:]+)$/.exec(text);
  const [from, to, step] = found ? found.slice(2).map(text => numberIn(text, ANY)) : [];
  if (!found || from == null || to == null || step == null || step <= 0 || to < from) {
    throw new InputFault(t('calc.vary.notAccepted', { given: text }));
  }
  // A hair of slack, so that 0:1:0.1 ends at 1.
  return { field: found[1], from, step, count: Math.floor((to - from) / step + 1e-9) + 1 };
}

/**
 * Rows of the grid the axes span.
 *
 * @throws InputFault when there are more than a sweep may have
 */
export function rowCount(axes: readonly Axis[]): number {
  const count = axes.reduce((product, axis) => product * axis.count, 1);
  if (count <= MOST_ROWS) return count;
  throw new InputFault(t('calc.vary.tooMany', { count, most: MOST_ROWS }));
}

/** Values of the axes in one row; the last axis runs fastest. */
export function valuesAt(axes: readonly Axis[], row: number): number[] {
  const values = new Array<number>(axes.length);
  for (let i = axes.length - 1, rest = row; i >= 0; i--) {
    const { from, step, count } = axes[i];
    // Twelve digits, so that 0.1 + 0.2 prints as the 0.3 that was meant.
    values[i] = Number((from + step * (rest % count)).toPrecision(12));
    rest = Math.floor(rest / count);
  }
  return values;
}

/** Numbers that may be varied though the file leaves them to their usual value. */
const OPTIONAL = [
  'waistFromTailMm',
  'camberMm',
  'bootCentreFromTailMm',
  'bootSoleMm',
  'massKg',
  'edges.baseBevelDeg',
  'edges.sideAngleDeg',
  'bootSoleNewtonM2',
];

/** Every number of a pair that may be varied, by its path, for example `bending.stations[2].newtonM2`. */
export function numberFields(pair: object): string[] {
  return [...new Set([...numbersIn(pair, ''), ...OPTIONAL])];
}

function numbersIn(value: unknown, path: string): string[] {
  if (typeof value === 'number') return path === 'version' ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  const step = (key: string) => (Array.isArray(value) ? `[${key}]` : path === '' ? key : `.${key}`);
  return Object.entries(value).flatMap(([key, held]) => numbersIn(held, `${path}${step(key)}`));
}

/**
 * The pair with some of its numbers replaced.
 *
 * @throws InputFault when the changed pair is no longer one
 */
export function changedPair(pair: Pair, changes: ReadonlyMap<string, number>): Pair {
  const changed = structuredClone(pair);
  for (const [field, value] of changes) {
    const path = field.split(/[.[\]]+/).filter(Boolean);
    const last = path.pop() as string;
    let holder = changed as Record<string, unknown>;
    for (const key of path) {
      holder[key] ??= {};
      holder = holder[key] as Record<string, unknown>;
    }
    holder[last] = value;
  }
  const [problem] = checkPair(changed);
  if (problem) throw new InputFault(say(problem));
  return changed;
}
