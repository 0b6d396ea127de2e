import { describe, expect, it } from 'vitest';
import { type Equilibrium, grooveSolver, holdAlong } from '../../../core/carve/index.ts';
import { hardness, radians, rigidInTorsion, slalomSki } from './demo.ts';

const conditions = { edgeAngle: radians(55), load: 1200, hardness: hardness(10), fore: 0 };
function solved(ski = slalomSki): Equilibrium {
  const answer = grooveSolver(ski).solve(conditions);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
}

describe('hold along the edge', () => {
  const answer = solved();
  const boot = slalomSki.bootCentre;

  it('is θ − φ − b − ψ at every node', () => {
    const { along } = holdAlong(answer, boot, radians(50), radians(0.5));
    for (let i = 0; i < along.length; i++) {
      expect(along[i]).toBeCloseTo(radians(55 - 50 - 0.5) - answer.twist[i], 12);
    }
  });

  it('is lost first at the end that twists most', () => {
    const hold = holdAlong(answer, boot, radians(53.8), radians(0.5));
    expect(hold.lostFirst).toBe(answer.twistTip > answer.twistTail ? 'tip' : 'tail');
    expect(hold.slips).toBe(true);
    expect(hold.skids).toBe(false);
    expect(hold.leastAt === 0 || hold.leastAt === 1.4).toBe(true);
  });

  it('skids when the boot lets go, and a ski rigid in torsion lets go everywhere at once', () => {
    const hold = holdAlong(solved(rigidInTorsion(slalomSki)), boot, radians(54.6), radians(0.5));
    expect(hold.skids).toBe(true);
    expect(hold.lostFirst).toBe('boot');
    expect(holdAlong(answer, boot, radians(40), 0).slips).toBe(false);
  });
});
