import { type ChangeWorth, changeWorths, type Inputs, type SkiWorth } from '../../core/line/index.ts';
import { rounded } from './quantity.ts';
import { told } from './words.ts';

/** A change and the seconds it brings, of a gate or of the whole set; negative is quicker. */
export interface WorthRow extends Omit<ChangeWorth, 'seconds'> {
  readonly seconds: number | null;
}

/** What each change is worth, the dearest first: of the inputs, in seconds per SI unit, and of the ski. */
export const worthRows = (inputs: Inputs, skiWorths: readonly SkiWorth[]): WorthRow[] =>
  changeWorths(inputs, skiWorths).map(row => ({ ...row, seconds: rounded(row.seconds) }));

/** The rows in words, for reading. */
export const spokenWorth = (rows: readonly WorthRow[], of: 'a gate' | 'in all' = 'a gate') =>
  rows.map(({ input, change, unit, seconds }) => ({
    'what changes': told({ key: `worth.${input}` }),
    by: `${change > 0 ? '+' : '−'}${Math.abs(change)}${unit === '' ? '' : ` ${unit}`}`,
    [`ms ${of}`]: seconds === null ? null : 1000 * seconds,
  }));
