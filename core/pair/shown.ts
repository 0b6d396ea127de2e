import type { Sentence } from '../language/index.ts';
import { keptNumber } from './json-text.ts';

const LONGEST_SHOWN = 60;

/** A value as a person would recognise it from the file, never longer than a line; undefined where there is none. */
export function shown(value: unknown): string | number | Sentence | undefined {
  if (value === undefined || typeof value === 'number') return value;
  if (Array.isArray(value)) {
    return value.length === 0
      ? { key: 'found.emptyList' }
      : { key: 'found.list', values: { count: value.length } };
  }
  if (typeof value === 'object' && value !== null) return { key: 'found.object' };
  const text =
    typeof value === 'bigint' ? String(value) : (keptNumber(value) ?? JSON.stringify(value) ?? typeof value);
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN - 1)}…` : text;
}

/** `['bending', 'stations', 2, 'newtonM2']` → `bending.stations[2].newtonM2`. */
export function fieldPath(path: readonly PropertyKey[]): string {
  let field = '';
  for (const key of path) {
    if (typeof key === 'number') field += `[${key}]`;
    else field += field === '' ? String(key) : `.${String(key)}`;
  }
  return field === '' ? 'file' : field;
}
