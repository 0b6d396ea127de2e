import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect } from 'vitest';
import { FieldError, type FieldFault } from '../../../core/fault/index.ts';
import { say } from '../../../core/language/index.ts';

/** `npm test -- --cases 50000` for more of each reader, `--seed 7` for others. */
const CASES = Number(process.env.TURNWRIGHT_CASES ?? 2000);
const SEED = Number(process.env.TURNWRIGHT_SEED ?? 161_600);

/** How often a property is asked; `share` of the cases where one costs more than reading a text. */
export const runs = (share = 1) => ({ numRuns: Math.ceil(CASES * share), seed: SEED });

/** What stands where something else should: numbers, marks, letters and names that readers have stumbled over. */
const ODD = [
  ...['', ' ', '0', '-0', '-1', '1e5', '1e308', '1e999', '-1e999', '1e-400', 'NaN', 'Infinity', '-Infinity'],
  ...[
    '9007199254740993',
    '123456789012345678901234567890',
    '0x10',
    '1_000',
    '1,5',
    '1.234.567',
    '1 234,5',
    '+5',
    '.5',
    '5.',
  ],
  ...['null', 'true', 'false', '[]', '{}', '[[', '}}', '"', '""', '"""', "'", '`', '\\', '\\"', '\\u0000'],
  ...[
    ',',
    ',,,',
    ';',
    '\t',
    '|',
    '\n',
    '\r',
    '\r\n',
    '\n\n\n',
    'sep=;\n',
    '#',
    '# ',
    ':',
    '/',
    '%',
    '5%',
    '°',
    'mm',
    ' cm',
    ' kg',
    ' in',
  ],
  ...[
    '=1+1',
    '@SUM(A1)',
    '-2+3',
    '+cmd',
    '\0',
    '\u001b[31m',
    '\u007f',
    '\u202e',
    '\u200b',
    '\ufeff',
    '\ufffd',
    '\ue000',
    '\ue0001',
    '\ud800',
    '\udfff',
  ],
  ...['🎿', 'Lärche', '山', 'x'.repeat(300), '(('.repeat(50), '"'.repeat(50), '9'.repeat(400)],
  ...[
    '__proto__',
    'constructor',
    'prototype',
    'toString',
    'hasOwnProperty',
    '{"__proto__":{"x":1}}',
    'turnwright.rack',
  ],
] as const;

const odd = fc.oneof({ weight: 4, arbitrary: fc.constantFrom<string>(...ODD) }, fc.string({ maxLength: 8 }));

/** One thing done to a text, somewhere in it: places are shares of its length. */
const harm = fc.record({
  kind: fc.constantFrom('put', 'cut', 'repeat', 'number', 'cell', 'line', 'move'),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat(60),
  put: odd,
});
type Harm = typeof harm extends fc.Arbitrary<infer T> ? T : never;

function harmed(text: string, { kind, at, length, put }: Harm): string {
  const place = Math.floor(at * text.length);
  const instead = (found: readonly RegExpExecArray[], by: string): string => {
    const one = found[Math.floor(at * found.length)] ?? found.at(-1);
    return one ? text.slice(0, one.index) + by + text.slice(one.index + one[0].length) : text + by;
  };
  switch (kind) {
    case 'cut':
      return text.slice(0, place) + text.slice(place + length);
    case 'repeat':
      return text.slice(0, place) + text.slice(place, place + length).repeat(4) + text.slice(place);
    case 'number':
      return instead([...text.matchAll(/-?\d+(\.\d+)?/g)], put);
    case 'cell':
      return instead([...text.matchAll(/[^,;\t\n\r]+/g)], put);
    case 'line': {
      const lines = text.split('\n');
      const from = Math.floor(at * lines.length);
      return lines.toSpliced(from, 1, ...Array.from({ length: length % 4 }, () => lines[from]!)).join('\n');
    }
    case 'move':
      return text.slice(place) + text.slice(0, place);
    default:
      return text.slice(0, place) + put + text.slice(place);
  }
}

/** One of these texts with something done to it, or any text at all. */
export const harmedText = (...sound: string[]): fc.Arbitrary<string> =>
  fc.oneof(
    {
      weight: 12,
      arbitrary: fc
        .tuple(fc.constantFrom(...sound), fc.array(harm, { minLength: 1, maxLength: 4 }))
        .map(([text, harms]) => harms.reduce(harmed, text)),
    },
    fc.array(odd, { maxLength: 12 }).map(parts => parts.join('')),
    fc.array(fc.nat(0xffff), { maxLength: 60 }).map(units => String.fromCharCode(...units)),
  );

/** JSON of one of these texts in which values, keys and lists are changed, but which is JSON still. */
export const harmedJson = (...sound: string[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom(...sound),
      fc.array(fc.tuple(fc.nat(), anyValue, fc.nat(5)), { minLength: 1, maxLength: 3 }),
    )
    .map(([text, changes]) => {
      // Values are of the generator, which gives the same one more than once.
      const own = changes.map(change => structuredClone(change));
      const whole = { file: JSON.parse(text) as unknown };
      for (const change of own) changeValue(whole, ...change);
      return JSON.stringify(whole.file) ?? '';
    });

const anyValue = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom<unknown>(...ODD),
  fc.constantFrom<unknown>(-1, 0, -0, 1e308, 5e-324, 2 ** 53, null, '', [], {}, [[]], Array(300).fill(0)),
);

/** Changes one of all places in a value: another value, none, one more key, a list twice as long. */
function changeValue(whole: { file: unknown }, place: number, value: unknown, how: number): void {
  const places: { holder: Record<string, unknown>; key: string }[] = [];
  const visit = (holder: object) => {
    for (const key of Object.keys(holder)) {
      places.push({ holder: holder as Record<string, unknown>, key });
      const held = (holder as Record<string, unknown>)[key];
      if (typeof held === 'object' && held !== null) visit(held);
    }
  };
  visit(whole);
  if (places.length === 0) return;
  const { holder, key } = places[place % places.length]!;
  const held = holder[key];
  if (how === 0) delete holder[key];
  else if (how === 1 && typeof held === 'object' && held !== null && !Array.isArray(held)) {
    // An own key of that name, as JSON has it, and not another prototype.
    Object.defineProperty(held, String(ODD[place % ODD.length]), {
      value,
      enumerable: true,
      configurable: true,
      writable: true,
    });
  } else if (how === 2 && Array.isArray(held)) holder[key] = [...held, ...held, value];
  else holder[key] = value;
}

/** Words of a program and not of a person. */
const PROGRAM = /undefined|\[object|=>|TypeError|Maximum call/;
const LONGEST_LINE = 900;

/** A refusal names its field, tells what is accepted, and does so in one line that fits on a screen. */
export function tellsWell(fault: FieldFault): void {
  const words = say(fault);
  const well =
    fault.field !== '' &&
    words.includes(fault.field) &&
    // What stands in quotes is what was found.
    !PROGRAM.test(words.replace(/"[^"]*"/g, '')) &&
    words.length < LONGEST_LINE &&
    Boolean(fault.because ?? fault.accepted);
  if (!well) throw new Error(`a refusal that tells badly: ${JSON.stringify(fault)}: ${words}`);
}

/** Deep equality, which thousands of cases can afford; the difference is drawn only where there is one. */
export function same(one: unknown, other: unknown): void {
  if (!isDeepStrictEqual(one, other)) expect(one).toEqual(other);
}

/** What a reader that throws gives: a value, or the fields it refuses. Any other error is the test's. */
export function readOrRefused<T>(read: () => T): { value: T } | { faults: readonly FieldFault[] } {
  try {
    return { value: read() };
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    return { faults: [error, ...error.others] };
  }
}

/** Every number within a value is one a person could have meant. */
export function finite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null) return true;
  return Object.values(value).every(finite);
}
