import type { PlainKey } from '../../core/language/index.ts';
import { type ChangeWorth, changeWorths, type Inputs, type SkiWorth } from '../../core/line/index.ts';
import { rounded } from './quantity.ts';
import { t } from './words.ts';

/** A change and the seconds it brings, of a gate or of the whole set; negative is quicker. */
export interface WorthRow extends Omit<ChangeWorth, 'seconds'> {
  readonly seconds: number | null;
}

/** What each change is worth, the dearest first: of the inputs, in seconds per SI unit, and of the ski. */
export const worthRows = (inputs: Inputs, skiWorths: readonly SkiWorth[]): WorthRow[] =>
  changeWorths(inputs, skiWorths).map(row => ({ ...row, seconds: rounded(row.seconds) }));

/** The rows in words, for reading; the seconds are those of a gate or in all. */
export const spokenWorth = (rows: readonly WorthRow[], of: 'calc.worth.perGate' | 'calc.worth.inAll') =>
  rows.map(({ input, change, unit, seconds }) => ({
    [t('calc.worth.what')]: t(`worth.${input}`),
    [t('calc.worth.by')]: `${change > 0 ? '+' : '−'}${Math.abs(change)}${unitWords(unit)}`,
    [t(of)]: seconds === null ? null : 1000 * seconds,
  }));

/** Units that are words. */
const UNITS: Readonly<Record<string, PlainKey>> = {
  'body weights': 'calc.bodyWeights',
  'body weights/s': 'calc.bodyWeightRate',
};

function unitWords(unit: string): string {
  if (unit === '') return '';
  const called = UNITS[unit];
  return ` ${called ? t(called) : unit}`;
}
