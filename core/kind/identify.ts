import { namesGates } from '../course/index.ts';
import type { FieldFault } from '../fault/index.ts';
import { namesBenchReadings } from '../flex/index.ts';
import { namesPairs, readJson, shown } from '../pair/index.ts';
import { namesProfile, namesProgramme } from '../run/index.ts';
import { readCsvRows } from '../table/index.ts';

/** JSON by its `format`, tables by their headings. `slope` is ground along a hill, `programme` edge over time. */
export const textKinds = [
  'pair',
  'rack',
  'edition',
  'gates',
  'bench',
  'slope',
  'programme',
  'sheet',
] as const;

export type TextKind = (typeof textKinds)[number];

export type Identified =
  | { readonly ok: true; readonly kind: TextKind }
  /** The `format` of JSON or the `headings` of a table are not known. */
  | { readonly ok: false; readonly fault: FieldFault };

const FORMATS: Readonly<Record<string, TextKind>> = {
  'turnwright.pair': 'pair',
  'turnwright.rack': 'rack',
  'turnwright.rules': 'edition',
};

/** Headings stand at the start; a table of a hundred thousand rows is not read through to know it, letters. */
const LOOKED_AT = 20_000;

/**
 * What a text holds, whichever way it came. What it says of itself counts; its name only where JSON is too
 * broken to say anything, so that the reader of that kind can tell what is wrong. Never throws.
 */
export function identify(text: string, name = ''): Identified {
  if (/^\uFEFF?\s*[{[]/.test(text) || /\.(json|twpair|twrack)$/i.test(name)) return identifyJson(text, name);
  const start = text.slice(0, LOOKED_AT);
  const headings = headingsOf(start);
  if (namesBenchReadings(headings)) return { ok: true, kind: 'bench' };
  if (namesGates(start)) return { ok: true, kind: 'gates' };
  if (namesProfile(headings)) return { ok: true, kind: 'slope' };
  if (namesProgramme(headings)) return { ok: true, kind: 'programme' };
  if (namesPairs(start)) return { ok: true, kind: 'sheet' };
  const found = headings.length > 0 ? shown(headings.join(' | ')) : undefined;
  return { ok: false, fault: { field: 'headings', found, accepted: { key: 'kind.tables' } } };
}

function identifyJson(text: string, name: string): Identified {
  const json = readJson(text);
  if (!json.ok) {
    const written = /"format"\s*:\s*"(turnwright\.(?:pair|rack|rules))"/.exec(text)?.[1];
    const kind = written ? FORMATS[written] : /\.(rack\.json|twrack)$/i.test(name) ? 'rack' : 'pair';
    return { ok: true, kind };
  }
  const { value } = json;
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;
  if (typeof format === 'string' && Object.hasOwn(FORMATS, format))
    return { ok: true, kind: FORMATS[format] };
  return { ok: false, fault: { field: 'format', found: shown(format), accepted: { key: 'kind.formats' } } };
}

/** The cells of the first line that is no remark. */
function headingsOf(start: string): readonly string[] {
  const lines = start.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const first = lines.findIndex(line => line.trim() !== '' && !line.startsWith('#'));
  if (first < 0) return [];
  return readCsvRows(lines.slice(first).join('\n')).rows[0]?.fields.map(field => field.trim()) ?? [];
}
