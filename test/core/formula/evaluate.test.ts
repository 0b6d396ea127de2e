import { expect, it } from 'vitest';
import { FieldError } from '../../../core/fault/index.ts';
import { evaluateFormula } from '../../../core/formula/index.ts';
import { told } from '../fault/told.ts';

const values = new Map([
  ['L', 1.4],
  ['d', 0.02],
]);

it.each([
  ['L^2 / (8 * d)', 12.25],
  ['-L + 2', 0.6],
  ['-L^2', -1.96],
  ['2^3^2', 512],
  ['sqrt(L * L) - abs(-d)', 1.38],
  ['atan2(1, 1) * 4 - pi', 0],
  ['max(L, d, 3)', 3],
  ['1e-3 * L', 0.0014],
])('%s', (formula, value) => {
  expect(evaluateFormula(formula, values)).toBeCloseTo(value, 12);
});

it.each([
  'L + q',
  'import("x")',
  'L = 3',
  'L.constructor',
  '[1, 2]',
  '"text"',
  'L; d',
  'L >',
  'd!',
  'constructor',
  '__proto__',
  'acos(L, d)',
])('%s is refused', formula => {
  expect(() => evaluateFormula(formula, values)).toThrow(FieldError);
});

it('takes a name’s own value before a constant of that name', () => {
  expect(evaluateFormula('2 * pi', new Map([['pi', 3]]))).toBe(6);
  expect(told(() => evaluateFormula('2 * e', values))[0]).toContain('the name "e"');
});
