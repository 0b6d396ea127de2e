import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export const RECORDS = join(import.meta.dirname, 'recorded');

/** px, and what else a drawing counts in. Far below what an eye sees; above what another machine rounds. */
const TOLERANCE = 0.5;

/** Attributes that say where something is drawn. */
const PLACES =
  /\b(d|x|y|[xy][12]|c[xy]|r|r[xy]|d[xy]|width|height|points|transform|viewBox|stroke-width)="([^"]*)"/g;
const NUMBER = /-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/g;

/** Said of a control in whole digits of the machine; where it stands and its words say the same. */
const VALUES = / aria-value(?:min|max|now)="[^"]*"/g;

/** The drawing of a figure as its record has it: an element a line, places to a tenth. */
export const recordOf = (svg: string): string =>
  `${svg
    .replaceAll('><', '>\n<')
    .replace(VALUES, '')
    .replace(PLACES, (_, name: string, places: string) => `${name}="${places.replace(NUMBER, short)}"`)}\n`;

const short = (number: string): string => String(Number(Number(number).toFixed(1)));

/**
 * Where a drawing is not that of its record: the first such line of both, or null where there is none. Words have to
 * be the same, places nearly so.
 */
export function difference(drawn: string, record: string): string | null {
  const [now, before] = [drawn.split('\n'), record.split('\n')];
  for (let i = 0; i < Math.max(now.length, before.length); i++) {
    if (!alike(now[i] ?? '', before[i] ?? ''))
      return `line ${i + 1}\n  now    ${now[i]}\n  before ${before[i]}`;
  }
  return null;
}

function alike(one: string, other: string): boolean {
  if (one === other) return true;
  const numbers: number[][] = [];
  const [rest, otherRest] = [one, other].map(line => {
    const own: number[] = [];
    numbers.push(own);
    return line.replace(PLACES, (_, name: string, places: string) => {
      own.push(...(places.match(NUMBER) ?? []).map(Number));
      return `${name}="${places.replace(NUMBER, '#')}"`;
    });
  });
  return rest === otherRest && numbers[0]!.every((each, i) => Math.abs(each - numbers[1]![i]!) <= TOLERANCE);
}

const fileOf = (name: string): string => join(RECORDS, `${name}.svg`);

/** The record of a chart; null where there is none. */
export function readRecord(name: string): string | null {
  try {
    return readFileSync(fileOf(name), 'utf8');
  } catch {
    return null;
  }
}

export function writeRecord(name: string, drawn: string): void {
  mkdirSync(dirname(fileOf(name)), { recursive: true });
  writeFileSync(fileOf(name), drawn);
}
