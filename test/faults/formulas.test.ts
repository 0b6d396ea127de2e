import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FieldError } from '../../core/fault/index.ts';
import { bendingOf } from '../../core/flex/index.ts';
import { compileFormula, TYPED_LIMITS } from '../../core/formula/index.ts';
import { type Pair, skiOf } from '../../core/pair/index.ts';
import { least } from '../core/pair/larch.ts';
import { harmedText, readOrRefused, runs, tellsWell } from './support/cases.ts';

/** Ways out of an expression that evaluators of formulas have had, one line each; none may give a value. */
const ESCAPES = [
  // Through what an object is made from.
  ...[
    's.constructor',
    's["constructor"]',
    'sin.constructor("return 1")()',
    'abs.constructor',
    '"".constructor',
  ],
  ...['s.__proto__', '__proto__', 's.__proto__.x = 1', '{}.__proto__', '[].constructor.constructor("x")()'],
  ...[
    'prototype',
    'constructor',
    'constructor(s)',
    'valueOf()',
    'toString(s)',
    'hasOwnProperty("x")',
    '__defineGetter__("x", s)',
  ],
  ...[
    'f(x) = x.constructor',
    'sin.call(s)',
    'sin.apply(s)',
    'sin.bind(s)',
    'isPrototypeOf(s)',
    's.toString()',
  ],
  // Through functions of the parser's own.
  ...[
    'import({a: 1})',
    'import("fs")',
    'createUnit("foo")',
    'createUnit("foo", "1 m")',
    'evaluate("1+1")',
    'parse("s")',
  ],
  ...[
    'simplify("s+s")',
    'derivative("s^2", "s")',
    'config({})',
    'typed("f", {})',
    'help(sin)',
    'parser()',
    'chain(s)',
    'compile("s")',
  ],
  ...[
    'reviver("a", 1)',
    'resolve("s")',
    'rationalize("s")',
    'typeOf(s)',
    'print("$s", {s: 1})',
    'format(s)',
    'unit("5 cm")',
    'bignumber(s)',
  ],
  ...[
    'random()',
    'randomInt(1, 9)',
    'map([1], sin)',
    'forEach([1], sin)',
    'filter([1], sin)',
    'sort([1], sin)',
    'ones(1e9)',
    'zeros(1e5, 1e5)',
  ],
  ...[
    'range(1, 1e9)',
    'factorial(1e7)',
    'combinations(1e9, 2)',
    'gamma(1e9)',
    'sum(1:1e9)',
    'nthRoot(s, 3)',
    'cbrt(s)',
    'pow(s, 2)',
  ],
  // Through the host.
  ...[
    'globalThis',
    'global',
    'window',
    'self',
    'process',
    'process.exit()',
    'require("fs")',
    'Function("x")',
    'eval("1")',
    'this',
  ],
  ...[
    'document',
    'fetch("x")',
    'setTimeout(s, 1)',
    'Symbol("x")',
    'Reflect',
    'Proxy',
    'new Date()',
    'await s',
    'async',
    'yield s',
  ],
  // Through syntax beyond sums and products.
  ...[
    'a = 3',
    's = 4; s',
    's; s',
    's\ns',
    '[1, 2]',
    '[s]',
    '{a: 1}',
    '{a: 1}.a',
    '{"__proto__": 1}',
    's[1]',
    's.x',
    "'text'",
    '"text"',
  ],
  ...[
    '`s`',
    's ? 1 : 2',
    's > 1',
    's == s',
    's != s',
    's and s',
    's or s',
    'not s',
    's xor s',
    '~s',
    's & s',
    's | s',
    's << 2',
    's >>> 1',
  ],
  ...[
    's!',
    '5!',
    's % 2',
    's mod 2',
    "s'",
    's to cm',
    '5 cm',
    '5 inch',
    's in m',
    '1:3',
    '1:1e9',
    's .* s',
    's ./ s',
    's .^ 2',
    '2 // 3',
  ],
  ...[
    'true',
    'false',
    'null',
    'undefined',
    'NaN',
    'Infinity',
    'i',
    'tau',
    'phi',
    'version',
    'LN2',
    'x',
    'S',
    'PI',
    'abs',
    'sin',
    'f(x) = x',
    '# s',
    '@s',
  ],
  // Numbers that are none, and functions with too many or too few values.
  ...[
    '0x10',
    '0b11',
    '0o17',
    '1e',
    '1e999',
    '-1e999',
    '9e9999',
    '5%',
    '50 % + s',
    '1_000',
    '1..2',
    '1.2.3',
    '١',
    '½',
    's²',
    '√s',
    '−s',
    '2×s',
  ],
  ...[
    'abs()',
    'abs(s, s)',
    'min()',
    'min(s)',
    'max(s, s, s)',
    'sqrt(s, 2)',
    'log(s, 2)',
    'exp()',
    'sin(,s)',
    'sin(s,)',
    '()',
    '(s',
    's)',
    '(',
    ')',
    '*',
    's *',
    '^',
    's ^',
    's ** 2',
    '',
    ' ',
    '\t',
  ],
];

test('there is no way out of a formula', () => {
  expect(ESCAPES.length).toBeGreaterThanOrEqual(180);
  expect(new Set(ESCAPES).size).toBe(ESCAPES.length);
  const given: string[] = [];
  for (const text of ESCAPES) {
    try {
      compileFormula(text, 's')(0.5);
      given.push(text);
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      tellsWell(error);
    }
  }
  expect(given).toEqual([]);
  expect(Object.keys(Object.prototype)).toEqual([]);
});

test('whatever is asked, its powers and its depth are answered with a number or refused', () => {
  const towers = [
    '9^9^9^9',
    '(9^9^9)^-9',
    '0^0',
    '0/0',
    '1/0',
    '-1^0.5',
    '(0-1)^0.5',
    'exp(exp(exp(9)))',
    'log(0)',
    'sqrt(0-1)',
    'tan(pi/2)',
    '1e308*10',
    '2^-s^2',
  ];
  for (const text of towers) expect(typeof compileFormula(text, 's')(0.5)).toBe('number');
  const { characters, depth } = TYPED_LIMITS;
  const deep = [
    ...[depth + 1, characters, 100_000].map(n => `${'('.repeat(n)}s${')'.repeat(n)}`),
    ...[depth + 1, 100_000].map(n => `${'abs('.repeat(n)}s${')'.repeat(n)}`),
    ...[depth + 1, 100_000].map(n => `${'-'.repeat(n)}s`),
    ...[depth + 1, 100_000].map(n => `s${'^s'.repeat(n)}`),
    `s${'+s'.repeat(100_000)}`,
    '9'.repeat(100_000),
  ];
  for (const text of deep) {
    const read = readOrRefused(() => compileFormula(text, 's'));
    if (!('faults' in read)) expect.fail(`${text.slice(0, 60)} was read`);
    else read.faults.forEach(tellsWell);
  }
});

test('any text is a function of one number or refused', () => {
  const sound = [
    '20 + 120*(1-abs(2*s-1)^1.6)',
    'max(40, 300*sin(pi*s)) / e',
    'sqrt(1+s)*exp(-s)+log(2+s)+tan(s)+cosh(s)-sinh(s)+tanh(s)+cos(s)+min(s,0.5)',
  ];
  fc.assert(
    fc.property(harmedText(...sound), text => {
      const read = readOrRefused(() => compileFormula(text, 's'));
      if ('faults' in read) read.faults.forEach(tellsWell);
      else {
        const once = [0, 0.37, 1].map(read.value);
        if (once.some(value => typeof value !== 'number')) expect.fail(text);
        // The same text is the same function.
        const again = compileFormula(text, 's');
        if (![0, 0.37, 1].every((s, at) => Object.is(again(s), once[at]))) expect.fail(text);
      }
    }),
    runs(),
  );
});

test('a stiffness in a file is refused by the same walker, by its field', () => {
  for (const text of [
    's.constructor',
    'import("x")',
    '9^9^9',
    'x',
    '-1',
    '0*s',
    '1/0',
    '# s',
    `${'('.repeat(99)}s`,
  ]) {
    const pair: Pair = { ...least, bending: { kind: 'formula', newtonM2: text } };
    const read = readOrRefused(() => bendingOf(skiOf(pair)));
    if (!('faults' in read)) expect.fail(`${text} was taken for a stiffness`);
    else {
      expect(read.faults[0]!.field).toBe('bending.newtonM2');
      tellsWell(read.faults[0]!);
    }
  }
});
