import { asCsvFile, writeCsvRows } from '../../core/table/index.ts';
import { t } from './words.ts';

export type Cell = number | string | boolean | null;

export interface Column {
  readonly name: string;
  /** Decimals shown in the readable table; CSV keeps every digit. */
  readonly decimals?: number;
}

export interface Table {
  readonly title?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Records as rows, a column a field in the order given; without any, all that the first record has. */
export function tableOf<T extends Readonly<Record<string, Cell>>>(
  records: readonly T[],
  columns: readonly (Column & { readonly name: keyof T & string })[] = Object.keys(records[0] ?? {}).map(
    name => ({ name }),
  ),
): Table {
  return { columns, rows: records.map(record => columns.map(({ name }) => record[name])) };
}

/** Single readings, one a row. */
export function readingTable(title: string, rows: readonly (readonly [string, Cell, unit: string])[]): Table {
  return {
    title,
    columns: [{ name: t('calc.reading') }, { name: t('calc.value') }, { name: t('calc.unit') }],
    rows,
  };
}

/** Lines up columns: numbers to the right, words to the left. */
export function formatTable({ title, columns, rows }: Table): string {
  const cells = rows.map(row => row.map((cell, index) => show(cell, columns[index].decimals)));
  const widths = columns.map(({ name }, index) =>
    Math.max(name.length, ...cells.map(row => row[index].length)),
  );
  const isRight = columns.map((_, index) => rows.every(row => typeof row[index] !== 'string'));
  const line = (row: readonly string[]) =>
    row
      .map((cell, index) => (isRight[index] ? cell.padStart(widths[index]) : cell.padEnd(widths[index])))
      .join('  ')
      .trimEnd();
  const heading = line(columns.map(({ name }) => name));
  const rule = widths.map(width => '─'.repeat(width)).join('  ');
  return `${[...(title ? [title.replaceAll('\n', ' ')] : []), heading, rule, ...cells.map(line)].join('\n')}\n`;
}

/** RFC 4180 for a spreadsheet, with a heading line of the field names. */
export function formatCsv({ columns, rows }: Table): string {
  return asCsvFile([columns.map(({ name }) => name), ...rows].map(row => `${csvLine(row)}\n`).join(''));
}

/** One row without its line end; what is null is an empty field. */
export function csvLine(row: readonly Cell[]): string {
  return writeCsvRows([row.map(cell => (cell === null ? '' : String(cell)))]).slice(0, -1);
}

function show(cell: Cell, decimals = 2): string {
  if (cell === null) return '–';
  if (typeof cell !== 'number') return String(cell).replaceAll('\n', ' ');
  // A rounded-off minus sign would read as a direction.
  return cell.toFixed(decimals).replace(/^-(?=[0.]*$)/, '');
}
