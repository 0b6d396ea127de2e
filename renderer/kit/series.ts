import { bisectRight } from 'd3';
import { type MeasureName, type System, shownAs } from '../../core/units/index.ts';
import { type PairMark, t } from '../state/index.ts';

/** One line of a chart, in the units its axes' measures hold. */
export interface Series {
  readonly id: string;
  /** Printed at the end of the line; short. */
  readonly label: string;
  /** The pair's letter, colour and dash; absent for a line that belongs to no pair (a rule, a limit). */
  readonly mark?: PairMark;
  /** Ascending. */
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** Uncertainty band around y. */
  readonly low?: ArrayLike<number>;
  readonly high?: ArrayLike<number>;
  /** Thin and soft: context to read the others against. */
  readonly context?: boolean;
  /** Fills down to zero. */
  readonly filled?: boolean;
}

export interface Axis {
  readonly label: string;
  readonly measure: MeasureName;
  /** Fixed ends in held units; otherwise the ends of the data. */
  readonly domain?: readonly [number, number];
  /** Zero is on the axis. */
  readonly zero?: boolean;
  /** Greatest value shown, for quantities that run away (a radius near a straight edge). */
  readonly ceiling?: number;
  /** The axis goes at least this far, whatever the series hold: for lines drawn under them. */
  readonly reach?: number;
}

/** y at `x` by straight lines between samples; null outside the samples or where they are not finite. */
export function valueAt(series: Pick<Series, 'x' | 'y'>, x: number): number | null {
  const { x: xs, y: ys } = series;
  const last = xs.length - 1;
  if (last < 0 || x < xs[0]! || x > xs[last]!) return null;
  const high = Math.min(last, Math.max(1, bisectRight(xs, x)));
  const low = Math.max(0, high - 1);
  const span = xs[high]! - xs[low]!;
  const value = span > 0 ? ys[low]! + ((x - xs[low]!) / span) * (ys[high]! - ys[low]!) : ys[low]!;
  return Number.isFinite(value) ? value : null;
}

/** Ends of an axis over all the data, in held units; a flat line gets room above and below. */
export function extentOf(values: Iterable<ArrayLike<number>>, axis: Axis): [number, number] {
  if (axis.domain) return [axis.domain[0], axis.domain[1]];
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of values) {
    for (let at = 0; at < list.length; at++) {
      const value = Math.min(list[at]!, axis.ceiling ?? Number.POSITIVE_INFINITY);
      if (!Number.isFinite(value)) continue;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  if (axis.zero) {
    low = Math.min(low, 0);
    high = Math.max(high, 0);
  }
  if (axis.reach !== undefined) high = Math.max(high, axis.reach);
  if (!(high >= low)) return [0, 1];
  if (high === low) {
    const room = Math.abs(high) * 0.1 || 1;
    return [low - room, high + room];
  }
  return [low, high];
}

/** The chart's numbers as rows for a file: one row a sample, units in the heading, in the system on screen. */
export function seriesRows(x: Axis, y: Axis, series: readonly Series[], system: System): string[][] {
  const headed = (axis: Axis) => {
    const { unit } = shownAs(axis.measure, system);
    return unit ? `${axis.label} (${unit})` : axis.label;
  };
  const banded = series.some(each => each.low && each.high);
  const rows = [[t('kit.line'), headed(x), headed(y), ...(banded ? [t('kit.low'), t('kit.high')] : [])]];
  const toX = shownAs(x.measure, system).factor;
  const toY = shownAs(y.measure, system).factor;
  const plain = (value: number | undefined, factor: number) =>
    value === undefined || !Number.isFinite(value) ? '' : String(Number((value * factor).toPrecision(9)));
  for (const each of series) {
    const name = each.mark ? `${each.mark.letter} ${each.label}` : each.label;
    for (let at = 0; at < each.x.length; at++) {
      const row = [name, plain(each.x[at], toX), plain(each.y[at], toY)];
      if (banded) row.push(plain(each.low?.[at], toY), plain(each.high?.[at], toY));
      rows.push(row);
    }
  }
  return rows;
}
