import { z } from 'zod';

/**
 * One edition of competition limits as data. Rules change every season, so nothing about them is code: a
 * person can write the edition in force as a file (`"format": "turnwright.rules"`) and check against that.
 */

export const disciplines = ['SL', 'GS', 'SG', 'DH', 'other'] as const;
export const categories = ['men', 'women', 'U16 boys', 'U16 girls', 'U14 boys', 'U14 girls'] as const;
const limitedQuantities = [
  'lengthMm',
  'radiusM',
  'waistWidthMm',
  'frontWidthMm',
  'standingHeightMm',
  'bootSoleMm',
] as const;

export type Discipline = (typeof disciplines)[number];
export type Category = (typeof categories)[number];
export type LimitedQuantity = (typeof limitedQuantities)[number];

const positive = z.number().positive().finite();

const limitSchema = z
  .object({
    /** What the rule is called on screen. */
    rule: z.string().min(1),
    quantity: z.enum(limitedQuantities),
    disciplines: z.array(z.enum(disciplines)).min(1),
    categories: z.array(z.enum(categories)).min(1),
    least: positive.optional(),
    most: positive.optional(),
    /** How far below `least` lower-level races accept, in the quantity's unit. */
    lowerLevelTolerance: positive.optional(),
    status: z.enum(['seen', 'from memory', 'derived', 'common practice', 'own entry']),
    source: z.string().min(1),
  })
  .refine(limit => limit.least !== undefined || limit.most !== undefined, {
    message: 'a limit needs least, most or both',
    path: ['least'],
  })
  .refine(limit => limit.least === undefined || limit.most === undefined || limit.least <= limit.most, {
    message: 'least must not be greater than most',
    path: ['least'],
  });

export const editionSchema = z.object({
  format: z.literal('turnwright.rules'),
  version: z.literal(1),
  /** The edition's label, for example the season. */
  edition: z.string().min(1),
  notes: z.string().optional(),
  limits: z.array(limitSchema).min(1),
});

export type Edition = z.infer<typeof editionSchema>;
export type Limit = Edition['limits'][number];

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
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new EditionError([
      `The file is not JSON (${error instanceof Error ? error.message : 'unreadable'}).`,
    ]);
  }
  const version = (data as { version?: unknown } | null)?.version;
  if (typeof version === 'number' && version > 1) {
    throw new EditionError([`version: ${version} is newer than this program reads; accepted is 1.`]);
  }
  const parsed = editionSchema.safeParse(data);
  if (parsed.success) return parsed.data;
  throw new EditionError(
    parsed.error.issues.map(issue => {
      const field = issue.path.reduce<string>(
        (name, key) =>
          typeof key === 'number' ? `${name}[${key}]` : name ? `${name}.${String(key)}` : String(key),
        '',
      );
      return `${field || 'file'}: found ${describe(valueAt(data, issue.path))}; ${accepted(issue)}.`;
    }),
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

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    data,
  );
}

function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
