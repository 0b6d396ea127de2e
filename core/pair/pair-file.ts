import type { FieldFault } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { inconsistencies } from './consistency.ts';
import { jsonText } from './json-text.ts';
import { PAIR_FORMAT, PAIR_VERSION, type Pair, pairSchema } from './pair-schema.ts';
import { problemsWith, readJson } from './read-json.ts';

export type ReadPair =
  | {
      readonly ok: true;
      readonly pair: Pair;
      readonly readOnly: boolean;
      readonly notes: readonly Sentence[];
    }
  | { readonly ok: false; readonly problems: readonly FieldFault[] };

/** Read a pair file. Either the whole pair or the list of its problems; never throws, never half a pair. */
export function readPair(text: string): ReadPair {
  const json = readJson(text);
  if (!json.ok) return json;
  const read = pairFrom(json.value);
  return read.ok && json.notes.length > 0 ? { ...read, notes: [...json.notes, ...read.notes] } : read;
}

/** The same for a value already parsed, as inside a rack. */
export function pairFrom(value: unknown): ReadPair {
  const problems = checkPair(value);
  const newer = newerVersion(value);
  if (problems.length > 0) {
    return { ok: false, problems: newer === null ? problems : [newerProblem(newer), ...problems] };
  }
  // The schema only checks, it changes nothing: the value itself is the pair, unknown fields and all.
  const pair = value as Pair;
  if (newer === null) return { ok: true, pair, readOnly: false, notes: [] };
  const note = { key: 'pair.newerReadOnly', values: { name: pair.name, version: newer } } as const;
  return { ok: true, pair, readOnly: true, notes: [note] };
}

/** Everything wrong with a value offered as a pair; an empty list when it is one. Never throws. */
export function checkPair(value: unknown): FieldFault[] {
  const problems = problemsWith(pairSchema, value);
  return problems.length > 0 ? problems : inconsistencies(value as Pair);
}

/** The file text of a pair. */
export function writePair(pair: Pair): string {
  return jsonText(inWrittenOrder(pair));
}

/** A pair with its known fields in the order of the schema, then the rest as they came. */
export function inWrittenOrder(pair: Pair): Record<string, unknown> {
  const given = pair as Record<string, unknown>;
  const known = Object.keys(pairSchema.shape).filter(
    key => Object.hasOwn(given, key) && given[key] !== undefined,
  );
  const rest = Object.keys(given).filter(key => !Object.hasOwn(pairSchema.shape, key));
  return Object.fromEntries([...known, ...rest].map(key => [key, given[key]]));
}

function newerVersion(value: unknown): number | null {
  if (typeof value !== 'object' || value === null) return null;
  const { format, version } = value as { format?: unknown; version?: unknown };
  return format === PAIR_FORMAT && typeof version === 'number' && version > PAIR_VERSION ? version : null;
}

const newerProblem = (version: number): FieldFault => ({
  field: 'version',
  found: version,
  accepted: { oneOf: [PAIR_VERSION] },
  because: { key: 'pair.newerMisfit', values: { version, known: PAIR_VERSION } },
});
