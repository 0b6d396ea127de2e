import { describe, expect, it } from 'vitest';
import { input, type Working } from '../../../core/working/index.ts';
import { tellWorkings } from '../../../main/calc/tell-workings.ts';
import { originText, workingText } from '../../../renderer/kit/working-text.ts';

const radius: Working = {
  key: 'carve.turnRadius',
  title: { key: 'carve.title.turnRadius' },
  symbol: 'R',
  formula: '1 / c',
  inputs: [input('c', 'c', 'carve.partCurvature', 0.125, '1/m')],
  result: { value: 8, unit: 'm' },
  source: { key: 'source.planeGeometry' },
  status: 'derived',
};
const force: Working = {
  ...radius,
  key: 'run.force',
  title: { key: 'run.title.sidewaysForce' },
  inputs: [
    input('R', 'R', 'working.turnRadius', 8, 'm', 'carve.turnRadius'),
    input('b', 'b', 'working.baseBevel', 0.0087, 'rad', 'edges.baseBevelDeg'),
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
    inputs: [input('N', 'N', 'working.load', 40, 'N')],
    solved: {
      by: { key: 'shape.by.halving' },
      of: { key: 'carve.of.load' },
      left: '5 * R',
      right: 'N + 0.004',
      name: 'R',
      unit: 'N',
      within: 1e-3,
    },
  };

  it('says so, with its balance and how far it is left open', () => {
    const text = workingText(solved);
    const of = 'what the snow carries along the edge and the load on the ski';
    expect(text).toContain('  5 * R = N + 0.004\n');
    const left = '40\u00a0N against 40.004\u00a0N, left 0.004\u00a0N apart.';
    expect(text).toContain(`solved by bisection, from the balance of ${of}: ${left}`);
    expect(tellWorkings([solved])).toContain(
      `Solved by bisection, from the balance of ${of}: 40 N against 40.004 N, left 0.004 N apart.`,
    );
  });
});
