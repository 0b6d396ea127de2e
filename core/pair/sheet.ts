import { type CsvRow, readCsvRows, type Separator } from './csv-rows.ts';
import { checkPair } from './pair-file.ts';
import { PAIR_FORMAT, PAIR_VERSION, type Pair } from './pair-schema.ts';
import { problem } from './problem.ts';
import { readCell } from './sheet-cell.ts';
import { readColumns, type SheetColumn, type SheetField } from './sheet-columns.ts';

export interface SheetPair {
  /** Line of the file, counted from 1. */
  readonly row: number;
  readonly pair: Pair;
  /** Empty when the sheet gives none. */
  readonly owner: string;
  /** Cells of columns this program has no use for, by heading. */
  readonly extra: Readonly<Record<string, string>>;
}

export interface SheetProblem {
  readonly row: number;
  /** Field of the pair file, or `row` for the row as a whole. */
  readonly field: string;
  readonly found: string;
  readonly accepted: string;
  readonly message: string;
  /** The row as it stood in the file. */
  readonly raw: string;
  /** Whether the pair was taken over all the same, without the field at fault. */
  readonly imported: boolean;
}

export interface SheetGuess {
  readonly row: number;
  readonly field: string;
  readonly message: string;
}

export interface Sheet {
  readonly separator: Separator;
  readonly columns: readonly SheetColumn[];
  readonly pairs: readonly SheetPair[];
  readonly problems: readonly SheetProblem[];
  /** Units that had to be guessed, so that a person can look them over. */
  readonly guesses: readonly SheetGuess[];
}

/** Without one of these a pair cannot be computed with; any other field may be missing or set aside. */
const required: readonly SheetField[] = [
  'name',
  'lengthMm',
  'contactLengthMm',
  'tipWidthMm',
  'waistWidthMm',
  'tailWidthMm',
];

/**
 * Reads a technician's sheet, one pair a row under a heading row. Every row ends up in `pairs`, in `problems`
 * with its raw text, or in both; none is lost. Never throws.
 */
export function readSheet(text: string, separator?: Separator): Sheet {
  const table = readCsvRows(text, separator);
  const [headings, ...rows] = table.rows;
  const columns = headings ? readColumns(headings.fields) : [];
  const pairs: SheetPair[] = [];
  const problems: SheetProblem[] = [];
  const guesses: SheetGuess[] = [];
  if (!columns.some(column => column.field !== null)) {
    const accepted = 'a first row of headings such as name; length; contact length; tip; waist; tail';
    for (const row of table.rows.length > 0 ? table.rows : [{ line: 1, fields: [], raw: '' }]) {
      const found = headings ? JSON.stringify(headings.raw) : 'nothing';
      const message = `headings: ${found} names no column known here; accepted is ${accepted}`;
      problems.push({
        row: row.line,
        field: 'headings',
        found,
        accepted,
        message,
        raw: row.raw,
        imported: false,
      });
    }
    return { separator: table.separator, columns, pairs, problems, guesses };
  }
  for (const row of rows) readRow(row, columns, pairs, problems, guesses);
  for (const line of table.unclosedQuotes) {
    const row = table.rows.findLast(candidate => candidate.line <= line);
    const accepted = 'quotes in pairs';
    const message = `row: a quote is opened and never closed; read as an ordinary character`;
    problems.push({
      row: line,
      field: 'row',
      found: '"',
      accepted,
      message,
      raw: row?.raw ?? '',
      imported: true,
    });
  }
  return { separator: table.separator, columns, pairs, problems, guesses };
}

function readRow(
  row: CsvRow,
  columns: readonly SheetColumn[],
  pairs: SheetPair[],
  problems: SheetProblem[],
  guesses: SheetGuess[],
): void {
  const values: Partial<Record<SheetField, number | string>> = {};
  const extra: Record<string, string> = {};
  const faults: Omit<SheetProblem, 'imported'>[] = [];
  const fault = (field: string, found: string, accepted: string, message: string): void => {
    faults.push({ row: row.line, field, found, accepted, message, raw: row.raw });
  };

  row.fields.forEach((cell, index) => {
    if (cell.trim() === '') return;
    const column = columns[index];
    if (column?.field == null) {
      extra[column?.heading || `column ${index + 1}`] = cell.trim();
      return;
    }
    const read = readCell(column.field, cell, column.unit);
    if (!read.ok) {
      const told = problem(column.field, cell.trim(), read.accepted);
      fault(column.field, told.found, told.accepted, told.message);
      return;
    }
    values[column.field] = read.value;
    if (read.guess !== null) {
      guesses.push({ row: row.line, field: column.field, message: `${column.heading}: ${read.guess}` });
    }
  });

  const blocked = new Set(faults.map(each => each.field));
  let pair = pairOf(values);
  for (const told of checkPair(pair)) {
    const field = sheetFieldOf(told.field);
    if (blocked.has(field)) continue;
    const missing = told.found === 'nothing' && required.includes(field as SheetField);
    const column = columns.find(each => each.field === field);
    const message = !missing
      ? told.message
      : column
        ? `${field}: the cell under "${column.heading}" is empty; accepted is ${told.accepted}`
        : `${field}: the sheet has no such column; accepted is ${told.accepted}`;
    fault(field, told.found, told.accepted, message);
  }

  // An optional field at fault is set aside and told; the rest of the pair is still worth having.
  const optional = faults.every(each => !required.includes(each.field as SheetField));
  let imported = faults.length === 0;
  if (!imported && optional) {
    for (const each of faults) delete values[each.field as SheetField];
    pair = pairOf(values);
    imported = checkPair(pair).length === 0;
  }
  for (const each of faults) problems.push({ ...each, imported });
  if (imported) {
    pairs.push({ row: row.line, pair: pair as Pair, owner: String(values.owner ?? ''), extra });
  }
}

function pairOf(values: Partial<Record<SheetField, number | string>>): Record<string, unknown> {
  const { owner: _owner, sideAngleDeg, baseBevelDeg, ...rest } = values;
  const edges = {
    ...(baseBevelDeg === undefined ? {} : { baseBevelDeg }),
    ...(sideAngleDeg === undefined ? {} : { sideAngleDeg }),
  };
  return {
    format: PAIR_FORMAT,
    version: PAIR_VERSION,
    ...rest,
    ...(Object.keys(edges).length > 0 ? { edges } : {}),
  };
}

const sheetFieldOf = (field: string): string => field.replace(/^edges\./, '');
