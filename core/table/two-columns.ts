/**
 * Two columns of numbers from separated text, told row by row what is wrong with it. Commas, semicolons or
 * tabs separate; with semicolons or tabs a decimal comma is read; `#` starts a remark; the first row may name
 * the columns.
 */

export interface TwoColumns {
  readonly first: number[];
  readonly second: number[];
  /** Line in the text of each row, from 1. */
  readonly lines: number[];
}

/** Every row that could not be read, in one error. */
export class TableTextError extends Error {
  constructor(readonly problems: readonly string[]) {
    super(problems.join('\n'));
    this.name = 'TableTextError';
  }
}

/** One row of numbers, from 0, that cannot be used, whether or not a file holds it. */
export class RowError extends RangeError {
  override readonly name = 'RowError';

  constructor(
    /** From 0. */
    readonly row: number,
    readonly found: string,
    readonly accepted: string,
  ) {
    super(`point ${row + 1}: ${found} found; ${accepted}`);
  }
}

/** @throws TableTextError listing each bad row with its line, the text found and what is accepted */
function readTwoColumns(text: string, firstName: string, secondName: string): TwoColumns {
  const table: TwoColumns = { first: [], second: [], lines: [] };
  const problems: string[] = [];
  let headed = false;
  for (const [index, raw] of text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .entries()) {
    const line = raw.replace(/#.*/, '').trim();
    if (line === '') continue;
    const wide = /[;\t]/.test(line);
    const cells = line.split(wide ? /[;\t]/ : ',').map(c => c.trim().replace(/^"(.*)"$/, '$1'));
    const numbers = cells.map(c => numberOf(c, wide));
    const isHeading = !headed && table.first.length === 0 && numbers.every(Number.isNaN);
    headed = true;
    if (isHeading) continue;
    if (cells.length !== 2) {
      problems.push(
        `line ${index + 1}: ${cells.length} ${cells.length === 1 ? 'value' : 'values'} found (${line}); two are accepted, ${firstName} and ${secondName}${!wide && cells.length === 4 ? ' (with decimal commas, separated by semicolons or tabs)' : ''}`,
      );
      continue;
    }
    const bad = numbers.findIndex(v => !Number.isFinite(v));
    if (bad >= 0) {
      problems.push(
        `line ${index + 1}: ${bad === 0 ? firstName : secondName} ${JSON.stringify(cells[bad])} found; a number is accepted`,
      );
      continue;
    }
    table.first.push(numbers[0]);
    table.second.push(numbers[1]);
    table.lines.push(index + 1);
  }
  for (let i = 1; i < table.first.length; i++) {
    if (!(table.first[i] > table.first[i - 1])) {
      problems.push(
        `line ${table.lines[i]}: ${firstName} ${table.first[i]} found after ${table.first[i - 1]}; ascending values are accepted`,
      );
    }
  }
  if (problems.length === 0 && table.first.length < 2) {
    problems.push(
      `${table.first.length} rows found; two or more rows of ${firstName} and ${secondName} are accepted`,
    );
  }
  if (problems.length > 0) throw new TableTextError(problems);
  return table;
}

/**
 * Reads two columns and makes something of them. A row it cannot use is told by its line in the file.
 *
 * @throws TableTextError
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
    if (!(error instanceof RowError)) throw error;
    throw new TableTextError([`line ${lines[error.row]}: ${error.found} found; ${error.accepted}`]);
  }
}

function numberOf(cell: string, decimalComma: boolean): number {
  const text = decimalComma ? cell.replace(',', '.') : cell;
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
}
