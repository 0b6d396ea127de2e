import * as z from 'zod';
import type { Accepted } from '../fault/index.ts';
import type { PlainKey } from '../language/index.ts';

// A strict content policy forbids the code generation zod would otherwise probe for.
z.config({ jitless: true });

/** What is accepted where a check fails, by the mark its issue carries: the library hands on text only. */
const acceptedByMark = new Map<string, Accepted>();

/** The `error` of a check that accepts this. */
export function accepting(accepted: Accepted): { readonly error: string } {
  const mark = `#${acceptedByMark.size}`;
  acceptedByMark.set(mark, accepted);
  return { error: mark };
}

/** What the check of an issue accepts; undefined for a check that was made without `accepting`. */
export const acceptedBy = (issue: { readonly message: string }): Accepted | undefined =>
  acceptedByMark.get(issue.message);

/** The same for something a plain sentence names. */
export const acceptingKey = (key: PlainKey) => accepting({ key });

/** The same for an object, shown as the file writes it. */
export const acceptingShape = (shape: string) => accepting({ oneOf: [shape] });

/** A number field with its sane range. The meaning is for the JSON Schema of the file. */
export function quantity(from: number, to: number, unit: string, meaning: string) {
  const error = accepting({ from, to, ...(unit && { unit }) });
  const range = `a number from ${from} to ${to}${unit === '' ? '' : ` ${unit}`}`;
  return z.number(error).min(from, error).max(to, error).describe(`${meaning}: ${range}.`);
}

/** A text field of limited length; `least` 1 also refuses blank text. */
export function text(least: 0 | 1, most: number, meaning: string) {
  const error = accepting({ key: least === 0 ? 'accepted.textUpTo' : 'accepted.text', values: { most } });
  const length = `text of ${least === 0 ? 'at most' : `1 to`} ${most} characters`;
  const any = z.string(error).max(most, error).describe(`${meaning}: ${length}.`);
  return least === 0 ? any : any.regex(/\S/, error);
}

/** A list with sane bounds on its length. */
export function list<T extends z.ZodType>(item: T, least: number, most: number, of: PlainKey) {
  const error = accepting({ key: 'accepted.list', values: { least, most, of: { key: of } } });
  return z.array(item, error).min(least, error).max(most, error);
}
