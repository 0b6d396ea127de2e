import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { FieldError } from '../../../core/fault/index.ts';
import { compileFormula, TYPED_LIMITS } from '../../../core/formula/index.ts';
import { told } from '../fault/told.ts';

test('agrees with mathjs on everything it accepts', () => {
  const texts = [
    '20 + 120*(1-abs(2*s-1)^1.6)',
    '-s^2 + +3',
    '2s - -s',
    '2^-s^2',
    'max(40, 300*sin(pi*s)) / e',
    'sqrt(1+s)*exp(-s)+log(2+s)+tan(s)+cosh(s)-sinh(s)+tanh(s)+cos(s)+min(s,0.5)',
  ];
  for (const text of texts) {
    const f = compileFormula(text, 's');
    for (const s of [0, 0.13, 0.5, 0.77, 1]) expect(f(s)).toBeCloseTo(evaluate(text, { s }), 12);
  }
});

test.each([
  'import("x")',
  's.constructor',
  'f(x) = x',
  'a = 3',
  's; s',
  '[1, 2]',
  '{a: 1}',
  '"text"',
  'true',
  's!',
  's % 2',
  's > 0.5 ? 1 : 2',
  's == 1',
  'not s',
  'x',
  'constructor',
  '__proto__',
  'toString(s)',
  'i',
  'Infinity',
  'NaN',
  '1e999',
  'abs',
  'abs(s, s)',
  'min(s)',
  'max(s, s, s)',
  'random()',
  'evaluate("1")',
  '5 cm',
  '1:3',
  "s'",
  '(s',
  '5%',
  '50 % + s',
  '1e',
  '2e + s',
  '3e-',
  '0x10',
  '0b1',
  '',
])('refuses %s', text => {
  expect(() => compileFormula(text, 's')).toThrow(FieldError);
  expect(told(() => compileFormula(text, 's'))[0]).toMatch(/ accepted is .*\bs\b/);
});

test('length, count of parts and nesting are limited', () => {
  const refused = (text: string) => expect(told(() => compileFormula(text, 's'))[0]);
  refused(`1${'+1'.repeat(TYPED_LIMITS.characters)}`).toBe(
    'formula: 401 characters is not accepted; accepted is at most 200',
  );
  refused(`s${'+s'.repeat(70)}`).toMatch(/accepted is up to 120 parts nested 40 deep/);
  refused(`${'('.repeat(60)}s${')'.repeat(60)}`).toMatch(/accepted is up to 120 parts nested 40 deep/);
});

test('says what was found and what is accepted', () => {
  expect(told(() => compileFormula('100 * x', 's'))).toEqual([
    'formula: the name "x" in "100 * x" is not accepted; accepted is numbers, s, pi, e, + - * / ^ (2s is 2*s), parentheses, ' +
      'abs, sqrt, exp, log, sin, cos, tan, sinh, cosh, tanh of one value, min, max of two',
  ]);
  expect(told(() => compileFormula(' ', 's'))).toEqual([
    'formula: an empty formula is not accepted; accepted is an expression in s',
  ]);
  expect(told(() => compileFormula('acos(q)', 'q'))[0]).toMatch(/"acos" of 1 value in/);
});

test('a product may leave its sign out', () => {
  for (const [text, value] of [
    ['2s', 1],
    ['2(s+1)', 3],
    ['(1+s)(1-s)', 0.75],
    ['2e1 s', 10],
    ['2exp(0 s)', 2],
    ['s e', Math.E / 2],
  ] as const) {
    expect(compileFormula(text, 's')(0.5)).toBeCloseTo(value, 12);
  }
});
