import * as z from 'zod';

// A strict content policy forbids the code generation zod would otherwise probe for.
z.config({ jitless: true });

/** A number field with its sane range; the message of every issue is the text of what is accepted. */
export function quantity(from: number, to: number, unit: string, meaning: string) {
  const error = `a number from ${from} to ${to}${unit === '' ? '' : ` ${unit}`}`;
  return z.number({ error }).min(from, { error }).max(to, { error }).describe(`${meaning}: ${error}.`);
}

/** A text field of limited length; `least` 1 also refuses blank text. */
export function text(least: 0 | 1, most: number, meaning: string) {
  const error = `text of ${least === 0 ? 'at most' : `1 to`} ${most} characters`;
  const any = z.string({ error }).max(most, { error }).describe(`${meaning}: ${error}.`);
  return least === 0 ? any : any.regex(/\S/, { error });
}

/** A list with sane bounds on its length. */
export function list<T extends z.ZodType>(item: T, least: number, most: number, of: string) {
  const error = `a list of ${least} to ${most} ${of}`;
  return z.array(item, { error }).min(least, { error }).max(most, { error });
}
