import { describe, expect, it } from 'vitest';
import { penetrationWorking, twistWorking } from '../../../core/carve/index.ts';
import { twistOfExample } from '../working/examples/carve.ts';

const { ski, equilibrium } = twistOfExample;

describe('workings of the groove', () => {
  it('find the solved depth again from how the base lies', () => {
    expect(penetrationWorking(ski, equilibrium).result.value).toBeCloseTo(equilibrium.maxPenetration, 12);
  });

  it('find the solved twist again by summing the torque of the snow', () => {
    const tip = twistWorking(ski, equilibrium, 'tip')!.result.value;
    const tail = twistWorking(ski, equilibrium, 'tail')!.result.value;
    expect(tip / equilibrium.twistTip).toBeCloseTo(1, 2);
    expect(tail / equilibrium.twistTail).toBeCloseTo(1, 2);
    expect(tip).toBeGreaterThan(0.005);
  });

  it('have nothing to say of the twist of a ski rigid in torsion', () => {
    expect(twistWorking({ ...ski, torsion: null }, equilibrium, 'tip')).toBeNull();
  });
});
