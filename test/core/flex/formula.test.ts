import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { compileFormula, FORMULA_LIMITS, profileOf, StiffnessError } from '../../../core/flex/index.ts';

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
    const f = compileFormula(text);
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
  '',
])('refuses %s', text => {
  expect(() => compileFormula(text, 'bending.newtonM2')).toThrow(StiffnessError);
  expect(() => compileFormula(text, 'bending.newtonM2')).toThrow(/^bending\.newtonM2: .*accepted/);
});

test('no text gets anything but a number or a refusal out of it', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 40 }), text => {
      try {
        expect(typeof compileFormula(text)(0.3)).toBe('number');
      } catch (cause) {
        expect(cause).toBeInstanceOf(StiffnessError);
      }
    }),
    { numRuns: 200 },
  );
});

test('length, count of parts and nesting are limited', () => {
  expect(() => compileFormula(`1${'+1'.repeat(FORMULA_LIMITS.characters)}`)).toThrow(
    /characters found; up to 200/,
  );
  expect(() => compileFormula(`s${'+s'.repeat(70)}`)).toThrow(/up to 120 parts nested 40 deep/);
  expect(() => compileFormula(`${'('.repeat(60)}s${')'.repeat(60)}`)).toThrow(
    /up to 120 parts nested 40 deep/,
  );
});

test('a stiffness that vanishes, is negative or is not a number is refused with the place', () => {
  const make = (newtonM2: string) => () =>
    profileOf({ kind: 'formula', newtonM2 }, 1.4, { field: 'torsion' });
  expect(make('100*s')).toThrow(/torsion.newtonM2: 0 N·m² found at s = 0; a finite number over 0/);
  expect(make('50 - 100*s')).toThrow(/found at s = 0\.5/);
  expect(make('sqrt(s-0.5)')).toThrow(/NaN N·m²/);
  expect(make('1/(s-1)^2')).toThrow(/Infinity N·m² found at s = 1/);
});
