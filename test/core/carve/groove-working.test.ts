import { describe, expect, it } from 'vitest';
import { penetrationWorking, turnRadiusWorking, twistWorking } from '../../../core/carve/index.ts';
import { balanceSides, checkWorking } from '../../../core/working/index.ts';
import { twistOfExample } from '../working/examples/carve.ts';

const { ski, equilibrium } = twistOfExample;

describe('workings of the groove', () => {
  it('find the solved depth again from how the base lies', () => {
    expect(checkWorking(penetrationWorking(ski, equilibrium))).toEqual([]);
  });

  it('find the solved twist again by summing the torque of the snow', () => {
    for (const end of ['tip', 'tail'] as const) {
      const working = twistWorking(ski, equilibrium, end)!;
      expect(balanceSides(working, working.solved!).share).toBeLessThan(1e-4);
      expect(working.result.value).toBe(end === 'tip' ? equilibrium.twistTip : equilibrium.twistTail);
      expect(working.result.value).toBeGreaterThan(0.005);
    }
  });

  it('find the load again by summing what the snow carries', () => {
    const working = turnRadiusWorking(equilibrium);
    expect(balanceSides(working, working.solved!)).toMatchObject({ right: equilibrium.conditions.load });
    expect(balanceSides(working, working.solved!).share).toBeLessThan(1e-7);
  });

  it('have nothing to say of the twist of a ski rigid in torsion', () => {
    expect(twistWorking({ ...ski, torsion: null }, equilibrium, 'tip')).toBeNull();
  });
});
