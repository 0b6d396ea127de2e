import type * as z from 'zod';
import { fieldPath, type Problem, problem } from './problem.ts';

const LARGEST_FILE = 20_000_000;
const DEEPEST = 64;

/** Parse file text as JSON, a byte-order mark allowed, or say where it stops being JSON. Never throws. */
export function readJson(text: string): { ok: true; value: unknown } | { ok: false; problems: Problem[] } {
  const refuse = (accepted: string, sentence: string) => ({
    ok: false as const,
    problems: [problem('file', text.slice(0, 40), accepted, sentence)],
  });
  if (text.length > LARGEST_FILE) {
    return refuse(
      'at most 20 MB of JSON',
      `${text.length} characters is too long; accepted is at most 20 MB of JSON`,
    );
  }
  let value: unknown;
  try {
    value = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refuse(
      'JSON text',
      `is not JSON (${why.replaceAll(/\s+/g, ' ').slice(0, 160)}); accepted is JSON text`,
    );
  }
  // Deeper nesting than any real file could not be written back.
  if (!shallowerThan(value, DEEPEST)) {
    return refuse(
      'objects and lists nested at most 64 deep',
      'is nested too deeply; accepted is at most 64 levels',
    );
  }
  return { ok: true, value };
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

/** Check a value against a schema whose issue messages say what is accepted. */
export function problemsWith(schema: z.ZodType, value: unknown): Problem[] {
  const result = schema.safeParse(value);
  return result.success ? [] : result.error.issues.flatMap(issue => asProblems(issue, [], value));
}

function asProblems(issue: z.core.$ZodIssue, parent: readonly PropertyKey[], value: unknown): Problem[] {
  const path = [...parent, ...issue.path];
  if (issue.code === 'invalid_union') {
    // Where one alternative matched the outer shape, its inner complaints say more than "none fits".
    const inner = issue.errors.find(
      branch => branch.every(each => each.path.length > 0) && branch.length > 0,
    );
    if (inner) return inner.flatMap(each => asProblems(each, path, value));
  }
  return [problem(fieldPath(path), valueAt(value, path), issue.message)];
}

/** What stands at a path inside a parsed value; undefined where nothing does. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const key of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}
