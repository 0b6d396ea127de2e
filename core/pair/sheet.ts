import { type FieldFault, textFound } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { type CsvRow, readCsvRows, type Separator } from '../table/index.ts';
import { checkPair } from './pair-file.ts';
import { PAIR_FORMAT, PAIR_VERSION, type Pair } from './pair-schema.ts';
import { readCell } from './sheet-cell.ts';
import {
  countKnown,
  FAULT_HEADING,
  readColumns,
  type SheetColumn,
  type SheetField,
} from './sheet-columns.ts';
import { shown } from './shown.ts';

export interface SheetPair {
  /** Line of the file, counted from 1. */
  readonly row: number;
  readonly pair: Pair;
  /** Empty when the sheet gives none. */
  readonly owner: string;
  /** Cells of columns this program has no use for, by heading. */
  readonly extra: Readonly<Record<string, string>>;
}

/** A field of the pair file at fault; `row` for the row as a whole. */
export interface SheetProblem extends FieldFault {
  readonly row: number;
  /** The row as it stood in the file. */
  readonly raw: string;
  /** Whether the pair was taken over all the same, without the field at fault. */
  readonly imported: boolean;
}

export interface SheetGuess {
  readonly row: number;
  readonly field: string;
  readonly guess: Sentence;
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

/** Whether some row near the start of this text names a column of a technician's sheet. */
export function namesPairs(text: string): boolean {
  const { rows } = readCsvRows(text, separatorOf(text));
  const headings = rows[headingRow(rows)];
  return headings !== undefined && countKnown(headings.fields) > 0;
}

/**
 * Reads a technician's sheet, one pair a row under a heading row. Every row ends up in `pairs`, in `problems`
 * with its raw text, or in both; none is lost. A sheet of more rows than are accepted is one problem. Never throws.
 */
export function readSheet(text: string, separator?: Separator, progress?: (share: number) => void): Sheet {
  const table = readCsvRows(text, separator ?? separatorOf(text));
  const at = headingRow(table.rows);
  const headings = table.rows[at];
  const rows = table.rows.slice(at + 1);
  if (headings && headings.fields.length > MOST_COLUMNS) {
    const { line, raw, fields } = headings;
    const fault = { field: 'columns', found: fields.length, accepted: { to: MOST_COLUMNS } } as const;
    return {
      separator: table.separator,
      columns: [],
      pairs: [],
      problems: [{ row: line, ...fault, raw, imported: false }],
      guesses: [],
    };
  }
  const columns = headings ? readColumns(headings.fields) : [];
  const pairs: SheetPair[] = [];
  const problems: SheetProblem[] = [];
  const guesses: SheetGuess[] = [];
  if (!columns.some(column => column.field !== null)) {
    const found = headings && textFound(headings.raw);
    for (const { line, raw } of table.rows.length > 0 ? table.rows : [{ line: 1, raw: '' }]) {
      const fault = { field: 'headings', found, accepted: { key: 'pair.headings' } } as const;
      problems.push({ row: line, ...fault, raw, imported: false });
    }
    return { separator: table.separator, columns, pairs, problems, guesses };
  }
  for (const { line, raw } of table.rows.slice(0, at)) {
    guesses.push({
      row: line,
      field: 'row',
      guess: { key: 'pair.aboveHeadings', values: { text: cut(raw.trim()) } },
    });
  }
  if (rows.length > MOST_ROWS) {
    const { line, raw } = rows[MOST_ROWS];
    const fault = { field: 'rows', found: rows.length, accepted: { to: MOST_ROWS } } as const;
    problems.push({ row: line, ...fault, raw, imported: false });
    return { separator: table.separator, columns, pairs, problems, guesses };
  }
  for (const [index, row] of rows.entries()) {
    progress?.(index / rows.length);
    readRow(row, table.separator, columns, pairs, problems, guesses);
  }
  let from = 0;
  for (const line of table.unclosedQuotes) {
    // Both go down the file, so that no row is looked at twice.
    while (from + 1 < table.rows.length && table.rows[from + 1].line <= line) from++;
    const row = table.rows[from];
    const fault = {
      field: 'row',
      found: '"',
      accepted: { key: 'pair.quotesInPairs' },
      because: { key: 'pair.quoteNotClosed' },
    } as const;
    problems.push({ row: line, ...fault, raw: row?.raw ?? '', imported: true });
  }
  return { separator: table.separator, columns, pairs, problems, guesses };
}

function readRow(
  row: CsvRow,
  separator: Separator,
  columns: readonly SheetColumn[],
  pairs: SheetPair[],
  problems: SheetProblem[],
  guesses: SheetGuess[],
): void {
  const values: Partial<Record<SheetField, number | string>> = {};
  const extra: Record<string, string> = {};
  const faults: Omit<SheetProblem, 'imported'>[] = [];
  const refuse = (fault: FieldFault): void => {
    faults.push({ row: row.line, ...fault, raw: row.raw });
  };
  const guess = (field: string, heading: string, made: Sentence): void => {
    guesses.push({
      row: row.line,
      field,
      guess: { key: 'pair.guessUnder', values: { heading: cut(heading), guess: made } },
    });
  };

  const { cells, joined } = fitted(row, separator, columns);
  if (joined !== null) {
    guess('notes', columns.at(-1)!.heading, { key: 'pair.readAsOneCell', values: { text: cut(joined) } });
  }
  const surplus = cells.slice(columns.length).filter(cell => cell.trim() !== '').length;
  if (surplus > 0 && separator === ',') {
    // With a comma for the decimals too, every cell behind the first such number stands a column too far.
    const [cellsFound, headings] = [columns.length + surplus, columns.length];
    refuse({
      field: 'row',
      found: cellsFound,
      accepted: { oneOf: [headings] },
      because: { key: 'pair.tooManyCells', values: { cells: cellsFound, headings } },
    });
  }
  cells.forEach((cell, index) => {
    if (cell.trim() === '') return;
    const column = columns[index];
    if (column?.field == null) {
      if (column?.heading !== FAULT_HEADING) extra[column?.label ?? `column ${index + 1}`] = cell.trim();
      return;
    }
    const read = readCell(column.field, cell, column.unit);
    if (!read.ok) {
      refuse({ field: column.field, found: shown(cell.trim()), accepted: read.accepted });
      return;
    }
    values[column.field] = read.value;
    if (read.guess !== null) {
      guess(column.field, column.heading, read.guess);
    }
  });

  const blocked = new Set(faults.map(each => each.field));
  let pair = pairOf(values);
  for (const reported of checkPair(pair)) {
    const field = sheetFieldOf(reported.field);
    if (blocked.has(field)) continue;
    const missing = required.includes(field as SheetField) && values[field as SheetField] === undefined;
    const column = columns.find(each => each.field === field);
    const cell = column && row.fields[columns.indexOf(column)]?.trim();
    const accepted = { accepted: reported.accepted };
    if (!missing) {
      const elsewhere = cell && column && reported.found !== undefined && cell !== String(reported.found);
      const found = elsewhere
        ? ({
            key: 'pair.cellUnder',
            values: { found: reported.found, cell: cut(cell), heading: cut(column.heading) },
          } as const)
        : reported.found;
      refuse({ ...reported, field, found });
    } else if (column) {
      const because = { key: 'pair.emptyCell', values: { heading: cut(column.heading), accepted } } as const;
      refuse({ ...reported, field, because });
    } else refuse({ ...reported, field, because: { key: 'pair.noSuchColumn', values: { accepted } } });
  }

  // An optional field at fault is set aside and told; the rest of the pair is still worth having.
  const optional = faults.every(each => each.field !== 'row' && !required.includes(each.field as SheetField));
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

/** More pairs than any club has; a file of anything else is told so. */
const MOST_ROWS = 20_000;
const MOST_COLUMNS = 1000;
const HEADINGS_LOOKED_FOR = 12;

/** Which row names the columns: the one of the first few that names most. A title may stand above it. */
function headingRow(rows: readonly CsvRow[]): number {
  const counts = rows.slice(0, HEADINGS_LOOKED_FOR).map(row => countKnown(row.fields));
  const most = Math.max(0, ...counts);
  return most > 1 ? counts.indexOf(most) : 0;
}

/** The separator by which most columns are known; undefined leaves it to the usual guess. */
function separatorOf(text: string): Separator | undefined {
  if (/^\uFEFF?sep=/i.test(text)) return undefined;
  const start = text.split(/\r\n|\n|\r/, HEADINGS_LOOKED_FOR).join('\n');
  const counted = (['\t', ';', '|', ','] as const).map(separator => ({
    separator,
    known: Math.max(0, ...readCsvRows(start, separator).rows.map(row => countKnown(row.fields))),
  }));
  const best = counted.reduce((one, other) => (other.known > one.known ? other : one));
  return best.known > 1 ? best.separator : undefined;
}

/** A row whose last column is text takes back what commas in the text have split off. */
function fitted(
  row: CsvRow,
  separator: Separator,
  columns: readonly SheetColumn[],
): { cells: readonly string[]; joined: string | null } {
  const last = columns.length - 1;
  const rest = row.fields.slice(last);
  const isText = columns[last]?.field === 'notes' && /\p{L}/u.test(rest[0] ?? '');
  if (!isText || rest.slice(1).every(cell => cell.trim() === '')) return { cells: row.fields, joined: null };
  const text = rest.join(separator).trim();
  return { cells: [...row.fields.slice(0, last), text], joined: text };
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

/** A heading or a cell as it is named in a sentence. */
const cut = (text: string): string =>
  text.length > LONGEST_NAMED ? `${text.slice(0, LONGEST_NAMED)}…` : text;
const LONGEST_NAMED = 60;
