import { checkPair, type Pair } from '../../core/pair/index.ts';
import { InputFault } from './fault.ts';

/** One thing varied: a number of the pair file by its path, or one of the question's own options. */
export interface Axis {
  readonly field: string;
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

const MOST_ROWS = 1_000_000;

/** `FIELD=FROM:TO:STEP`, the end included where a step falls on it. */
export function readAxis(text: string): Axis {
  const found = /^([A-Za-z][\w.]*)=([^:]+):([^:]+):([^:]+)$/.exec(text);
  const [from, to, step] = found ? found.slice(2).map(Number) : [];
  if (!found || ![from, to, step].every(Number.isFinite) || step <= 0 || to < from) {
    throw new InputFault(
      `--vary: "${text}" is not accepted; give FIELD=FROM:TO:STEP, rising by a step over 0`,
    );
  }
  // A hair of slack, so that 0:1:0.1 ends at 1.
  return { field: found[1], from, step, count: Math.floor((to - from) / step + 1e-9) + 1 };
}

/** Rows of the grid the axes span. */
export function rowCount(axes: readonly Axis[]): number {
  const count = axes.reduce((product, axis) => product * axis.count, 1);
  if (count <= MOST_ROWS) return count;
  throw new InputFault(`--vary: ${count} rows asked for; up to ${MOST_ROWS} are accepted`);
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

/** Every number a pair file states, by its path. */
export function numberFields(pair: object, before = ''): string[] {
  return Object.entries(pair).flatMap(([key, value]) => {
    if (typeof value === 'number' && key !== 'version') return [`${before}${key}`];
    const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isObject ? numberFields(value, `${before}${key}.`) : [];
  });
}

/**
 * The pair with some of its numbers replaced.
 *
 * @throws InputFault when the changed pair is no longer one
 */
export function changedPair(pair: Pair, changes: ReadonlyMap<string, number>): Pair {
  const changed = structuredClone(pair);
  for (const [field, value] of changes) {
    const path = field.split('.');
    const last = path.pop() as string;
    const holder = path.reduce<Record<string, unknown>>(
      (object, key) => object[key] as Record<string, unknown>,
      changed as Record<string, unknown>,
    );
    holder[last] = value;
  }
  const [problem] = checkPair(changed);
  if (problem) throw new InputFault(problem.message);
  return changed;
}
