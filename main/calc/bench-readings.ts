import type { BenchReading } from '../../core/flex/index.ts';
import { readCsvNumber, readCsvRows } from '../../core/table/index.ts';
import { InputFault } from './fault.ts';
import { MM } from './quantity.ts';

const required = ['loadFromTailMm', 'loadN', 'dialFromTailMm', 'deflectionMm'] as const;
/** Without these the supports stand under the contact points. */
const optional = ['rearSupportMm', 'frontSupportMm'] as const;
type Column = (typeof required)[number] | (typeof optional)[number];

/**
 * Bench readings from a table with a heading line, one reading a row.
 *
 * @throws InputFault naming the file, the line and the column
 */
export function readBenchReadings(file: string, text: string, contactLength: number): BenchReading[] {
  const [heading, ...rows] = readCsvRows(text).rows;
  const names = heading?.fields.map(field => field.trim().toLowerCase()) ?? [];
  const columnOf = (column: Column) => names.indexOf(column.toLowerCase());
  const missing = required.filter(column => columnOf(column) < 0);
  if (missing.length > 0) {
    throw new InputFault(
      `${file}: column ${missing[0]} is missing; the first line must name ${required.join(', ')}, ` +
        `and may name ${optional.join(', ')}`,
    );
  }
  return rows.map(({ line, fields }) => {
    const number = (column: Column): number => {
      const given = fields[columnOf(column)] ?? '';
      const value = readCsvNumber(given)?.value;
      if (value !== undefined) return value;
      throw new InputFault(`${file}: line ${line}, ${column}: "${given}" is not a number`);
    };
    const support = (column: Column, usual: number) => (columnOf(column) < 0 ? usual : number(column) * MM);
    return {
      loadAt: number('loadFromTailMm') * MM,
      load: number('loadN'),
      dialAt: number('dialFromTailMm') * MM,
      deflection: number('deflectionMm') * MM,
      rear: support('rearSupportMm', 0),
      front: support('frontSupportMm', contactLength),
    };
  });
}
