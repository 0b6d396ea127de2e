import { describe, expect, it } from 'vitest';
import { checkWorking, type Working } from '../../../core/working/index.ts';

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
