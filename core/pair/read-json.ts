import type * as z from 'zod';
import type { Accepted, FieldFault } from '../fault/index.ts';
import type { PlainKey, Sentence } from '../language/index.ts';
import { acceptedBy } from './fields.ts';
import { type ParsedJson, parseJson } from './json-text.ts';
import { fieldPath, shown } from './shown.ts';

const LARGEST_FILE = 20_000_000;
const DEEPEST = 64;
const MOST_NAMED = 5;

export type ReadJson =
  | {
      readonly ok: true;
      readonly value: unknown;
      /** What a person should know of how it was read. */
      readonly notes: readonly Sentence[];
    }
  | { readonly ok: false; readonly problems: FieldFault[] };

/** Parse file text as JSON, a byte-order mark allowed, or say where it stops being JSON. Never throws. */
export function readJson(text: string): ReadJson {
  const refuse = (accepted: Sentence, because: Sentence) => ({
    ok: false as const,
    problems: [{ field: 'file', found: text.slice(0, 40), accepted, because }],
  });
  if (text.length > LARGEST_FILE) {
    return refuse({ key: 'pair.atMost20MB' }, { key: 'pair.tooLong', values: { count: text.length } });
  }
  let read: ParsedJson;
  try {
    read = parseJson(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const detail = why.replaceAll(/\s+/g, ' ').slice(0, 160);
    return refuse({ key: 'pair.json' }, { key: 'pair.notJson', values: { detail } });
  }
  // Deeper nesting than any real file could not be written back.
  const { value, repeated } = read;
  if (!shallowerThan(value, DEEPEST)) {
    return refuse({ key: 'pair.nestedLess' }, { key: 'pair.nestedTooDeeply' });
  }
  const keys = repeated.slice(0, MOST_NAMED).map(key => `"${key.slice(0, 40)}"`);
  const notes: Sentence[] = keys.length > 0 ? [{ key: 'pair.repeatedKeys', values: { keys } }] : [];
  return { ok: true, value, notes };
}

function shallowerThan(value: unknown, limit: number): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > limit) return false;
    const next: unknown[] = [];
    for (const item of level) {
      if (typeof item === 'object' && item !== null)
        for (const inner of Object.values(item)) next.push(inner);
    }
    level = next;
  }
  return true;
}

/** Checks a value against a schema whose checks were made with `accepting`. */
export function problemsWith(schema: z.ZodType, value: unknown): FieldFault[] {
  const result = schema.safeParse(value);
  return result.success ? [] : result.error.issues.flatMap(issue => asProblems(issue, [], value));
}

function asProblems(issue: z.core.$ZodIssue, parent: readonly PropertyKey[], value: unknown): FieldFault[] {
  const path = [...parent, ...issue.path];
  if (issue.code === 'invalid_union') {
    // Where one alternative matched the outer shape, its inner complaints say more than "none fits".
    const inner = issue.errors.find(
      branch => branch.every(each => each.path.length > 0) && branch.length > 0,
    );
    if (inner) return inner.flatMap(each => asProblems(each, path, value));
  }
  return [
    {
      field: fieldPath(path),
      found: shown(valueAt(value, path)),
      accepted: acceptedBy(issue) ?? usual(issue),
    },
  ];
}

/** What a check without a word of its own accepts. */
function usual(issue: z.core.$ZodIssue): Accepted {
  switch (issue.code) {
    case 'invalid_type':
      return { key: KINDS[issue.expected] ?? 'accepted.object' };
    case 'invalid_value':
      return { oneOf: issue.values.map(value => JSON.stringify(value) ?? String(value)) };
    case 'too_small':
      return issue.origin === 'number'
        ? { above: Number(issue.minimum) }
        : { key: issue.origin === 'string' ? 'accepted.someText' : 'accepted.someEntries' };
    default:
      return { key: 'accepted.object' };
  }
}

const KINDS: Readonly<Record<string, PlainKey>> = {
  array: 'accepted.anyList',
  object: 'accepted.object',
  string: 'accepted.quotedText',
  number: 'accepted.number',
};

/** What stands at a path inside a parsed value; undefined where nothing does. */
function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const key of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}
