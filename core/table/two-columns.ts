/**
 * Two columns of numbers from separated text, told row by row what is wrong with it. Commas, semicolons or
 * tabs separate; with semicolons or tabs a decimal comma is read; `#` starts a remark; the first row may name
 * the columns.
 */

import { FieldError, type FieldFault, plainFault, textFound, throwFaults, tooLong } from '../fault/index.ts';

export interface TwoColumns {
  readonly first: number[];
  readonly second: number[];
  /** Line in the text of each row, from 1. */
  readonly lines: number[];
}

/** Rows that a measured line can have: one a decimetre over a kilometre. */
const MOST_ROWS = 10_000;
/** Letters of as many rows with remarks. */
const MOST_LETTERS = 2_000_000;
/** Longest row told, letters. */
const LONGEST_TOLD = 60;
/** A file of anything else is not told line by line. */
const MOST_FAULTS = 100;

/** @throws FieldError for the first bad row, with those that follow behind it */
function readTwoColumns(text: string, firstName: string, secondName: string): TwoColumns {
  const table: TwoColumns = { first: [], second: [], lines: [] };
  const faults: FieldFault[] = [];
  const columns = [firstName, secondName];
  throwFaults(tooLong(text, MOST_LETTERS));
  let headed = false;
  for (const [index, raw] of text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .entries()) {
    const where = { line: index + 1 };
    if (faults.length >= MOST_FAULTS) break;
    if (table.first.length >= MOST_ROWS) {
      faults.push({ field: 'rows', found: raw.slice(0, LONGEST_TOLD), accepted: { to: MOST_ROWS }, where });
      break;
    }
    const line = raw.replace(/#.*/, '').trim();
    if (line === '') continue;
    const wide = /[;\t]/.test(line);
    const cells = line.split(wide ? /[;\t]/ : ',').map(c => c.trim().replace(/^"(.*)"$/, '$1'));
    const numbers = cells.map(c => numberOf(c, wide));
    const isHeading = !headed && table.first.length === 0 && numbers.every(Number.isNaN);
    headed = true;
    if (isHeading) continue;
    if (cells.length !== 2) {
      faults.push({
        field: 'row',
        found: line.slice(0, LONGEST_TOLD),
        accepted: {
          key: !wide && cells.length === 4 ? 'table.twoValuesDecimalCommas' : 'table.twoValues',
          values: { first: firstName, second: secondName },
        },
        where,
      });
      continue;
    }
    const bad = numbers.findIndex(v => !Number.isFinite(v));
    if (bad >= 0) {
      faults.push({ field: columns[bad], found: textFound(cells[bad]) ?? '""', accepted: {}, where });
      continue;
    }
    table.first.push(numbers[0]);
    table.second.push(numbers[1]);
    table.lines.push(index + 1);
  }
  for (let i = 1; i < table.first.length; i++) {
    if (!(table.first[i] > table.first[i - 1])) {
      faults.push({
        field: firstName,
        found: table.first[i],
        accepted: { above: table.first[i - 1] },
        where: { line: table.lines[i] },
      });
    }
  }
  if (faults.length === 0 && table.first.length < 2) {
    const accepted = { key: 'table.twoRows', values: { first: firstName, second: secondName } } as const;
    faults.push({ field: 'rows', found: table.first.length, accepted });
  }
  throwFaults(faults);
  return table;
}

/**
 * Reads two columns and makes something of them. A row it cannot use is told by its line in the file.
 *
 * @throws FieldError for the first bad row, with those that follow behind it
 */
export function fromTwoColumns<T>(
  text: string,
  firstName: string,
  secondName: string,
  make: (first: number[], second: number[]) => T,
): T {
  const { first, second, lines } = readTwoColumns(text, firstName, secondName);
  try {
    return make(first, second);
  } catch (error) {
    if (!(error instanceof FieldError) || error.where?.row === undefined) throw error;
    throw new FieldError(plainFault(error, { where: { line: lines[error.where.row - 1] } }));
  }
}

function numberOf(cell: string, decimalComma: boolean): number {
  const text = decimalComma ? cell.replace(',', '.') : cell;
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
}
