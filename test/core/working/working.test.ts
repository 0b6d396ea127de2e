import temml from 'temml';
import { describe, expect, it } from 'vitest';
import {
  checkWorking,
  evaluate,
  substituted,
  texNumber,
  texValue,
  type Working,
} from '../../../core/working/index.ts';

const input = (name: string, value: number) => ({
  name,
  symbol: name,
  meaning: 'a number',
  value,
  unit: 'm',
});

const radius: Working = {
  key: 'test.radius',
  title: 'Radius',
  symbol: 'R',
  tex: 'R = \\frac{L^2}{8 d}',
  formula: 'L^2 / (8 * d)',
  inputs: [input('L', 1.4), input('d', 0.02)],
  result: { value: 12.25, unit: 'm' },
  source: 'Plane geometry',
  status: 'derived',
};

const withFormula = (formula: string): Working => ({ ...radius, formula });

describe('evaluating a formula', () => {
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
    expect(evaluate(withFormula(formula))).toBeCloseTo(value, 12);
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
  ])('%s is refused by name', formula => {
    expect(() => evaluate(withFormula(formula))).toThrow(/^test\.radius: /);
  });
});

describe('checking a working', () => {
  it('passes one that holds', () => {
    expect(checkWorking(radius)).toEqual([]);
  });

  it.each<[string, Partial<Working>]>([
    ['the formula gives', { result: { value: 12.25 * (1 + 1e-8), unit: 'm' } }],
    ['input W is not in the formula', { inputs: [...radius.inputs, input('W', 1)] }],
    ['an input is listed twice', { inputs: [...radius.inputs, input('d', 0.02)] }],
    ['input d is NaN', { inputs: [input('L', 1.4), input('d', Number.NaN)] }],
    ['source is empty', { source: ' ' }],
    ['the key is not', { key: 'radius' }],
    ['neither a formula nor a note', { formula: '', inputs: [] }],
    ['cannot be read', { formula: 'L^2 / (8 * d' }],
  ])('says when %s', (complaint, change) => {
    expect(checkWorking({ ...radius, ...change }).join('\n')).toContain(complaint);
  });
});

describe('numbers put in', () => {
  it('stand where the symbols stood', () => {
    expect(substituted(radius).replaceAll(' ', '')).toBe(
      'R=\\frac{{1.4}^{2}}{\\left(8\\cdot0.02\\right)}=12.25\\,\\mathrm{m}',
    );
  });

  it('are bracketed when negative or a power of ten', () => {
    const tex = substituted({ ...radius, inputs: [input('L', -1.4), input('d', 2e-8)] });
    expect(tex).toContain('\\left(-1.4\\right)');
    expect(tex).toContain('\\left(2 \\cdot 10^{-8}\\right)');
  });

  it('keep six figures and show units upright', () => {
    expect(texNumber(1 / 3)).toBe('0.333333');
    expect(texNumber(1.23456789e-9)).toBe('1.23457 \\cdot 10^{-9}');
    expect(texNumber(Number.POSITIVE_INFINITY)).toBe('\\infty');
    expect(texValue({ value: 300, unit: 'N*m^2' })).toBe('300\\,\\mathrm{N}\\,\\mathrm{m}^{2}');
    expect(texValue({ value: 9.81, unit: 'm/s^2' })).toBe('9.81\\,\\mathrm{m}/\\mathrm{s}^{2}');
    expect(texValue({ value: 2, unit: '1' })).toBe('2');
  });

  it('make TeX that can be set', () => {
    expect(() => temml.renderToString(substituted(radius), { throwOnError: true })).not.toThrow();
  });
});
