import { expect, it } from 'vitest';
import { FieldError } from '../../../core/fault/index.ts';
import { formulaTex } from '../../../core/formula/index.ts';

const symbols = new Map([
  ['theta', '\\theta'],
  ['phi', '\\varphi'],
  ['mu', '\\mu'],
  ['R_sc', 'R_{sc}'],
  ['y_1', "y'"],
]);

it.each([
  ['L^2 / (8 * d)', '\\frac{L^2}{8 d}'],
  ['R_sc * cos(theta)', 'R_{sc} \\cos\\theta'],
  ['y * sin(theta - phi) - w * cos(theta)', 'y \\sin(\\theta - \\varphi) - w \\cos\\theta'],
  ['sqrt(2 * f * tan(theta) / H)', '\\sqrt{\\frac{2 f \\tan\\theta}{H}}'],
  ['atan((S - T) / (2 * L))', '\\arctan\\frac{S - T}{2 L}'],
  ['1 / (s * k + (1 - s) / R)', '\\frac{1}{s k + (1 - s)/R}'],
  ['(2 * u / L)^2', '\\left(\\frac{2 u}{L}\\right)^2'],
  ['L / 2 * (1 - s)', '\\frac{L}{2}\\,(1 - s)'],
  ['-F * sin(theta)', '-F \\sin\\theta'],
  ['a - (b - c)', 'a - (b - c)'],
  ['(a - b) - c', 'a - b - c'],
  ['a + -b', 'a + (-b)'],
  ['a / b / c', '\\frac{a}{b c}'],
  ['a / (b / c)', '\\frac{a}{b/c}'],
  ['(a / b)^2 * c', '\\left(\\frac{a}{b}\\right)^2 c'],
  ['sin(theta)^2', '\\sin^2\\theta'],
  ['sin(theta)^-1', '(\\sin\\theta)^{-1}'],
  ['sin(theta) * mu', '\\sin\\theta\\,\\mu'],
  ['tan(max(0, theta))', '\\tan(\\max(0,\\, \\theta))'],
  ['sqrt(-a) * b', '\\sqrt{-a} b'],
  ['abs(a - b / c)', '\\left|a - \\frac{b}{c}\\right|'],
  ['y_1^2', "{y'}^2"],
  ['x^10', 'x^{10}'],
  ['2^3', '2^3'],
  ['a * 3', 'a \\cdot 3'],
  ['4 * o', '4\\,o'],
  ['2.5e-7 * a', '2.5 \\cdot 10^{-7} a'],
  ['atan2(y, 1 - z)', '\\operatorname{atan2}(y,\\, 1 - z)'],
  ['2 * pi', '2 \\pi'],
])('%s is set as %s', (text, tex) => {
  expect(formulaTex(text, symbols)).toBe(tex);
});

it.each(['a +', '[1, 2]', 'a > b', '"text"', 'a!', 'erf(x)', 'a = 3'])('%s is refused', text => {
  expect(() => formulaTex(text, symbols)).toThrow(FieldError);
});
