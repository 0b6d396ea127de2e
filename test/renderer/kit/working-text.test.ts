import { describe, expect, it } from 'vitest';
import type { Working } from '../../../core/working/index.ts';
import { tellWorkings } from '../../../main/calc/tell-workings.ts';
import { originText, workingText } from '../../../renderer/kit/working-text.ts';

const radius: Working = {
  key: 'carve.turnRadius',
  title: 'Turn radius of the bent ski',
  symbol: 'R',
  formula: '1 / c',
  inputs: [{ name: 'c', symbol: 'c', meaning: 'curvature', value: 0.125, unit: '1/m' }],
  result: { value: 8, unit: 'm' },
  source: 'a test',
  status: 'derived',
};
const force: Working = {
  ...radius,
  key: 'run.force',
  title: 'Sideways force',
  inputs: [
    { name: 'R', symbol: 'R', meaning: 'turn radius', value: 8, unit: 'm', from: 'carve.turnRadius' },
    { name: 'b', symbol: 'b', meaning: 'base bevel', value: 0.0087, unit: 'rad', from: 'edges.baseBevelDeg' },
  ],
};

describe('where a number put in comes from', () => {
  it('names a working shown beside it by its title, and a field of the file by its name', () => {
    expect(originText('carve.turnRadius', [force, radius])).toBe('see “Turn radius of the bent ski”');
    expect(originText('edges.baseBevelDeg', [force, radius])).toBe('edges.baseBevelDeg');
  });

  it('keeps the name of a working that is not shown to itself', () => {
    expect(originText('carve.turnRadius', [force])).toBe('has a working of its own');
  });

  it('stands in the text too', () => {
    const text = workingText(force, [force, radius]);
    expect(text).toContain('turn radius [see “Turn radius of the bent ski”]');
    expect(text).toContain('base bevel [edges.baseBevelDeg]');
    expect(text).not.toContain('carve.turnRadius');
  });
});

describe('a number that is solved', () => {
  const solved: Working = {
    ...radius,
    formula: '',
    inputs: [{ name: 'N', symbol: 'N', meaning: 'load', value: 40, unit: 'N' }],
    solved: {
      by: 'by halving',
      of: 'push and load',
      left: '5 * R',
      right: 'N + 0.004',
      name: 'R',
      unit: 'N',
      within: 1e-3,
    },
  };

  it('says so, with its balance and how far it is left open', () => {
    const text = workingText(solved);
    expect(text).toContain('  5 * R = N + 0.004\n');
    const left = '40\u00a0N against 40.004\u00a0N, left 0.004\u00a0N apart.';
    expect(text).toContain(`solved by halving, from the balance of push and load: ${left}`);
    expect(tellWorkings([solved])).toContain(
      'Solved by halving, from the balance of push and load: 40 N against 40.004 N, left 0.004 N apart.',
    );
  });
});
