import { reachOf, saidOf } from '../conditions/index.ts';
import type { Accepted } from '../fault/index.ts';
import { readCsvNumber, splitUnit } from '../table/index.ts';
import { sizeOf } from '../units/index.ts';

/** What the file of a set may state beside its gates, in the units people say; absent where it does not. */
export interface SetStatement {
  readonly discipline?: 'SL' | 'GS';
  readonly slopeDeg?: number;
  readonly speedKmh?: number;
  /** The speed is kept all the way; else it is the speed at the start. Stated with the speed. */
  readonly keepSpeed?: boolean;
  readonly greatestEdgeDeg?: number;
  /** One for all gates. */
  readonly gateWidthM?: number;
  /** Who races, as written. */
  readonly category?: string;
  /** Lines ahead of the headings that start with `#`, without it. */
  readonly comments?: readonly string[];
}

/** What is accepted of a set's numbers, in their units. */
const setRanges = {
  slopeDeg: reachOf('courseSlopeDeg'),
  speedKmh: reachOf('courseSpeedKmh'),
  greatestEdgeDeg: reachOf('courseEdgeMostDeg'),
  gateWidthM: reachOf('gateWidthM'),
} as const;

/** The column of a statement and what a heading of it may be, letters only. */
const columns = {
  discipline: { heading: 'discipline', means: /^discipline$/ },
  slope: { heading: 'slope (°)', means: /^slope$/ },
  keptSpeed: { heading: 'kept speed (km/h)', means: /^(kept)?speed(kept)?(kmh|ms)?$/ },
  startSpeed: { heading: 'start speed (km/h)', means: /^startspeed(kmh|ms)?$/ },
  greatestEdge: { heading: 'greatest edge (°)', means: /^greatestedge(angle)?$/ },
  gateWidth: { heading: 'gate width (m)', means: /^gatewidth$/ },
  category: { heading: 'category', means: /^category$/ },
} as const;

export type StatedColumn = keyof typeof columns;

export const statedColumns = Object.keys(columns) as StatedColumn[];

/** The statement a heading stands for, or null. */
export function statedColumn(heading: string): StatedColumn | null {
  const { word } = splitUnit(heading);
  return statedColumns.find(column => columns[column].means.test(word)) ?? null;
}

/** A statement read from its cell, or what would be accepted there. */
export type StatedValue =
  | { readonly ok: true; readonly value: SetStatement }
  | { readonly ok: false; readonly accepted: Accepted };

/** Reads a cell; a unit may stand in the heading or behind the number, a slope also in %. */
export function readStated(column: StatedColumn, heading: string, cell: string): StatedValue {
  const text = cell.trim();
  switch (column) {
    case 'discipline': {
      const word = text.toLowerCase();
      if (word === 'sl' || word === 'slalom') return { ok: true, value: { discipline: 'SL' } };
      if (word === 'gs' || word === 'giant slalom') return { ok: true, value: { discipline: 'GS' } };
      return { ok: false, accepted: { oneOf: ['SL', 'GS'] } };
    }
    case 'category':
      return { ok: true, value: { category: text } };
    case 'slope': {
      const percent = text.endsWith('%') || (heading.includes('%') && !text.endsWith('°'));
      const number = plain(text.replace(/[%°]$/, ''));
      const degrees = percent && number !== null ? saidOf('courseSlopeDeg', Math.atan(number / 100)) : number;
      return ranged('slopeDeg', degrees, '°');
    }
    case 'keptSpeed':
    case 'startSpeed': {
      const number = readCsvNumber(text);
      const unit = number?.unit ?? (/m\/s/i.test(heading) ? 'm/s' : 'km/h');
      const speed = number && (unit === 'km/h' || unit === 'm/s') ? number.value * sizeOf(unit) : null;
      const read = ranged('speedKmh', speed && saidOf('courseSpeedKmh', speed), 'km/h');
      return read.ok ? { ok: true, value: { ...read.value, keepSpeed: column === 'keptSpeed' } } : read;
    }
    case 'greatestEdge':
      return ranged('greatestEdgeDeg', plain(text.replace(/°$/, '')), '°');
    case 'gateWidth':
      return ranged('gateWidthM', plain(text.replace(/\s*m$/i, '')), 'm');
  }
}

/** The statement as headed cells, each a column of the file; null where it states nothing there. */
export function writeStated(
  statement: SetStatement,
  column: StatedColumn,
): { readonly heading: string; readonly cell: string | null } {
  const { discipline, slopeDeg, speedKmh, keepSpeed, greatestEdgeDeg, gateWidthM, category } = statement;
  const values: Record<StatedColumn, string | number | undefined> = {
    discipline,
    slope: slopeDeg,
    keptSpeed: keepSpeed === false ? undefined : speedKmh,
    startSpeed: keepSpeed === false ? speedKmh : undefined,
    greatestEdge: greatestEdgeDeg,
    gateWidth: gateWidthM,
    category,
  };
  const value = values[column];
  return { heading: columns[column].heading, cell: value === undefined ? null : String(value) };
}

function ranged(field: keyof typeof setRanges, value: number | null, unit: string): StatedValue {
  const [least, most] = setRanges[field];
  return value !== null && value >= least && value <= most
    ? { ok: true, value: { [field]: value } }
    : { ok: false, accepted: { from: least, to: most, unit } };
}

function plain(text: string): number | null {
  const number = readCsvNumber(text);
  return number === null || number.unit !== null ? null : number.value;
}
