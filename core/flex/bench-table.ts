import { type FieldFault, tooLong } from '../fault/index.ts';
import { readCsvNumber, readCsvRows } from '../table/index.ts';
import { MM, type Parsed, readIn } from '../units/index.ts';
import type { BenchReading } from './identify.ts';

/** Columns of a table of bench readings: the name the program writes, then others it takes. */
const COLUMNS = {
  loadAt: ['loadFromTailMm', 'loadAtMm'],
  load: ['loadN'],
  dialAt: ['dialFromTailMm', 'dialAtMm'],
  deflection: ['deflectionMm'],
  rear: ['rearSupportMm'],
  front: ['frontSupportMm'],
} as const;
type Column = keyof typeof COLUMNS;

/** Nobody presses a ski as often; a file of anything else is told so. */
const MOST_READINGS = 1000;
const MOST_LETTERS = 1_000_000;

const REQUIRED: readonly Column[] = ['loadAt', 'load', 'dialAt', 'deflection'];

export type BenchTable =
  | { readonly ok: true; readonly readings: readonly BenchReading[] }
  | {
      readonly ok: false /** A cell or a column at fault, as the program names it. */;
      readonly fault: FieldFault;
    };

const columnsOf = (headings: readonly string[]): ((column: Column) => number) => {
  const names = headings.map(heading => heading.trim().toLowerCase());
  return column => Math.max(...COLUMNS[column].map(each => names.indexOf(each.toLowerCase())));
};

/** Whether these headings are of bench readings: a load and a deflection are named. */
export function namesBenchReadings(headings: readonly string[]): boolean {
  const at = columnsOf(headings);
  return at('load') >= 0 && at('deflection') >= 0;
}

/**
 * Bench readings in SI out of a table with a heading line, one reading a row. Without support columns the ski
 * lies on its contact points, `contactLength` (m) apart. Never throws; the first fault ends the reading.
 */
export function readBenchTable(text: string, contactLength: number): BenchTable {
  const [long] = tooLong(text, MOST_LETTERS);
  if (long) return { ok: false, fault: long };
  const [heading, ...rows] = readCsvRows(text).rows;
  if (rows.length > MOST_READINGS) {
    const fault = { field: 'readings', found: rows.length, accepted: { to: MOST_READINGS } } as const;
    return { ok: false, fault: { ...fault, where: { line: rows[MOST_READINGS].line } } };
  }
  const at = columnsOf(heading?.fields ?? []);
  const missing = REQUIRED.find(column => at(column) < 0);
  if (missing) {
    return {
      ok: false,
      fault: {
        where: { line: heading?.line ?? 1 },
        field: COLUMNS[missing][0],
        found: undefined,
        accepted: {
          key: 'flex.benchHeadings',
          values: { names: REQUIRED.map(column => COLUMNS[column][0]) },
        },
      },
    };
  }
  const readings: BenchReading[] = [];
  for (const { line, fields } of rows) {
    const reading: Record<Column, number> = {
      loadAt: 0,
      load: 0,
      dialAt: 0,
      deflection: 0,
      rear: 0,
      front: contactLength,
    };
    for (const column of Object.keys(COLUMNS) as Column[]) {
      if (at(column) < 0) continue;
      const read = readCell(fields[at(column)] ?? '', column === 'load' ? 'N' : 'mm');
      if (!read.ok) {
        const { found, accepted } = read;
        return { ok: false, fault: { where: { line }, field: COLUMNS[column][0], found, accepted } };
      }
      reading[column] = column === 'load' ? read.value : read.value * MM;
    }
    readings.push(reading);
  }
  return { ok: true, readings };
}

/** A cell as a number of `unit`; the number as sheets write it, with a unit of its own or none. */
function readCell(cell: string, unit: string): Parsed {
  const given = cell.trim();
  const number = readCsvNumber(given);
  // What is no number of a sheet, such as 1e3, may be one all the same.
  return readIn(number ? `${number.value} ${number.unit ?? ''}` : given, unit);
}
