import { describe, expect, it } from 'vitest';
import {
  type Balance,
  balanceSides,
  balanceTex,
  checkWorking,
  input,
  type Working,
  workingTex,
} from '../../../core/working/index.ts';

const length = (name: string, value: number) => input(name, name, 'working.contactLength', value, 'm');

const radius: Working = {
  key: 'test.radius',
  title: { key: 'shape.title.radius' },
  symbol: 'R',
  formula: 'L^2 / (8 * d)',
  inputs: [length('L', 1.4), length('d', 0.02)],
  result: { value: 12.25, unit: 'm' },
  source: { key: 'source.planeGeometry' },
  status: 'derived',
};

/** The same radius as if it were solved. */
const arc: Balance = {
  of: { key: 'carve.of.load' },
  by: { key: 'shape.by.halving' },
  left: '8 * d * R',
  right: 'L^2',
  name: 'R',
  unit: 'm^2',
  within: 1e-9,
};

describe('checking a working', () => {
  it('passes one that holds', () => {
    expect(checkWorking(radius)).toEqual([]);
  });

  it('passes one that is solved and catches a wrong solution', () => {
    const solved = { ...radius, formula: '', solved: arc };
    expect(checkWorking(solved)).toEqual([]);
    const wrong = { ...solved, result: { value: 12.2501, unit: 'm' } };
    expect(checkWorking(wrong).join()).toContain('left open');
    expect(balanceSides(wrong, arc).residual).toBeCloseTo(1.6e-5, 9);
  });

  it.each<[string, Partial<Working>]>([
    ['the formula gives', { result: { value: 12.25 * (1 + 1e-8), unit: 'm' } }],
    ['input W is not in the formula', { inputs: [...radius.inputs, length('W', 1)] }],
    ['an input is listed twice', { inputs: [...radius.inputs, length('d', 0.02)] }],
    ['input d is NaN', { inputs: [length('L', 1.4), length('d', Number.NaN)] }],
    ['symbol is empty', { symbol: ' ' }],
    ['the key is not', { key: 'radius' }],
    ['neither a formula nor a note', { formula: '', inputs: [] }],
    ['cannot be read', { formula: 'L^2 / (8 * d' }],
    ['the balance of carve.of.load is left open', { solved: { ...arc, right: '1.001 * L^2' } }],
    ['the solved number is among its own inputs', { formula: '', solved: { ...arc, name: 'd' } }],
    [
      'the solved number is not in its balance',
      { formula: '', solved: { ...arc, left: 'L^2', right: 'L^2' } },
    ],
    ['within is 0.1', { solved: { ...arc, within: 0.1 } }],
    ['input d is not in the formula', { formula: '', solved: { ...arc, left: '19.6 / L * R / R' } }],
  ])('says when %s', (complaint, change) => {
    expect(checkWorking({ ...radius, ...change }).join('\n')).toContain(complaint);
  });
});

describe('the equation of a working', () => {
  it('is made from the text of its formula, or of the balance it was solved from', () => {
    expect(workingTex(radius)).toBe('R = \\frac{L^2}{8 d}');
    const solved = { ...radius, formula: '', solved: arc };
    expect(workingTex(solved)).toBe('8 d R = L^2');
    expect(workingTex({ ...radius, solved: arc })).toBe('R = \\frac{L^2}{8 d}');
    expect(balanceTex({ ...radius, solved: arc })).toBe('8 d R = L^2');
    expect(balanceTex(radius)).toBe('');
  });

  it('is set by hand only for a reason', () => {
    const typed = { ...radius, tex: 'R = \\sum L_i' };
    expect(workingTex(typed)).toBe('R = \\frac{L^2}{8 d}');
    expect(workingTex({ ...typed, texReason: 'sum' })).toBe('R = \\sum L_i');
  });
});
