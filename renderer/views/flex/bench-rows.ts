import type { BenchReading, Profile } from '../../../core/flex/index.ts';
import { bendingCompliance } from '../../../core/flex/index.ts';
import { readCsvNumber, readCsvRows } from '../../../core/table/index.ts';

const MM = 1e-3;

/** Columns as the command line reads them; the short names are taken as well. */
const COLUMNS = {
  loadAt: ['loadFromTailMm', 'loadAtMm'],
  load: ['loadN'],
  dialAt: ['dialFromTailMm', 'dialAtMm'],
  deflection: ['deflectionMm'],
  rear: ['rearSupportMm'],
  front: ['frontSupportMm'],
} as const;
type Column = keyof typeof COLUMNS;
const REQUIRED: readonly Column[] = ['loadAt', 'load', 'dialAt', 'deflection'];

export type BenchRows =
  | { readonly ok: true; readonly readings: readonly BenchReading[] }
  | { readonly ok: false; readonly problem: string };

/**
 * Bench readings out of a table with a heading line, one reading a row; without support columns the ski lies
 * on its contact points. A problem names the line and column, what was found and what is accepted.
 */
export function readBenchRows(text: string, contactLength: number): BenchRows {
  const [heading, ...rows] = readCsvRows(text).rows;
  const names = heading?.fields.map(field => field.trim().toLowerCase()) ?? [];
  const place = (column: Column) =>
    Math.max(...COLUMNS[column].map(each => names.indexOf(each.toLowerCase())));
  const missing = REQUIRED.find(column => place(column) < 0);
  if (missing) {
    const needed = REQUIRED.map(column => COLUMNS[column][0]).join(', ');
    return {
      ok: false,
      problem: `Column ${COLUMNS[missing][0]} is missing: the first line must name ${needed}.`,
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
      const at = place(column);
      if (at < 0) continue;
      const given = fields[at] ?? '';
      const value = readCsvNumber(given)?.value;
      if (value === undefined || !Number.isFinite(value)) {
        const name = COLUMNS[column][0];
        return { ok: false, problem: `Line ${line}, ${name}: "${given}" found; a number is accepted.` };
      }
      reading[column] = column === 'load' ? value : value * MM;
    }
    readings.push(reading);
  }
  return { ok: true, readings };
}

/** Load stands, as shares of the contact length, of the made-up readings. */
const STANDS = [0.2, 0.35, 0.5, 0.65, 0.8];

/** What a ski of this profile would read on the bench under 100 N, dial under the load, to 0.01 mm. */
export function exampleRows(profile: Profile, contactLength: number): string {
  const lines = ['loadFromTailMm,loadN,dialFromTailMm,deflectionMm'];
  for (const share of STANDS) {
    const atMm = Math.round(share * contactLength * 1e3);
    const deflection = 100 * bendingCompliance(profile, 0, contactLength, atMm * MM);
    lines.push(`${atMm},100,${atMm},${(deflection * 1e3).toFixed(2)}`);
  }
  return `${lines.join('\n')}\n`;
}
