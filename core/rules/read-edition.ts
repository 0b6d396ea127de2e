import type * as z from 'zod';
import { fieldPath, readJson, shown, valueAt } from '../pair/index.ts';
import { type Edition, editionSchema } from './edition.ts';

/** An edition file at fault: `message` names each field, what was found and what is accepted. */
export class EditionError extends Error {
  override readonly name = 'EditionError';
  readonly problems: readonly string[];
  constructor(problems: readonly string[]) {
    super(problems.join('\n'));
    this.problems = problems;
  }
}

/** Reads an edition file. Throws `EditionError` naming every field at fault. */
export function readEdition(text: string): Edition {
  const json = readJson(text);
  if (!json.ok) throw new EditionError(json.problems.map(({ message }) => `${message}.`));
  const data = json.value;
  const version = (data as { version?: unknown } | null)?.version;
  if (typeof version === 'number' && version > 1) {
    throw new EditionError([`version: ${version} is newer than this program reads; accepted is 1.`]);
  }
  const parsed = editionSchema.safeParse(data);
  if (parsed.success) return parsed.data;
  throw new EditionError(
    parsed.error.issues.map(
      issue => `${fieldPath(issue.path)}: found ${shown(valueAt(data, issue.path))}; ${accepted(issue)}.`,
    ),
  );
}

const kinds: Readonly<Record<string, string>> = {
  array: 'a list',
  object: 'a JSON object',
  string: 'text in quotes',
  number: 'a number',
};

/** What would be accepted, in words that need no knowledge of the reader. */
function accepted(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `accepted is ${kinds[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return `accepted is ${issue.values.map(value => JSON.stringify(value)).join(', ')}`;
    case 'too_small':
      return issue.origin === 'number'
        ? `accepted is a number above ${issue.minimum}`
        : `accepted is at least one ${issue.origin === 'string' ? 'character' : 'entry'}`;
    default:
      return issue.message;
  }
}
