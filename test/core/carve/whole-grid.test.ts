// @module-tag slow
import { describe, expect, it } from 'vitest';
import { type CarvingSki, grooveSolver } from '../../../core/carve/index.ts';
import { giantSlalomSki, hardness, radians, rigidInTorsion, slalomSki } from './demo.ts';
import { demoPairs } from './demo-pairs.ts';

const EDGES = [2, 5, 10, 20, 30, 40, 50, 60, 68, 75];
const LOADS = [200, 400, 800, 1500, 2600, 4000];
const SNOWS = [0.04, 0.1, 0.3, 1, 3, 10, 30, 90];

function unsolved(ski: CarvingSki): string[] {
  const failures: string[] = [];
  const solver = grooveSolver(ski);
  for (const edge of EDGES) {
    for (const load of LOADS) {
      for (const snow of SNOWS) {
        const answer = solver.solve({ edgeAngle: radians(edge), load, hardness: hardness(snow), fore: 0 });
        if (!answer.ok) failures.push(JSON.stringify(answer.reason));
        else if (!(answer.residual <= 1e-8 && answer.turnRadius > 0))
          failures.push(`${edge}°, ${load} N, ${snow}: ${answer.residual}, ${answer.turnRadius} m`);
      }
    }
  }
  return failures;
}

describe('2–75°, 200–4000 N, 0.04–90 N/mm³ without one failure', () => {
  it('finds the demo pairs', () => {
    expect(demoPairs.length).toBeGreaterThan(3);
  });

  it.each([
    ['invented slalom ski', slalomSki] as const,
    ['invented giant slalom ski', giantSlalomSki] as const,
    ...demoPairs,
  ])(
    '%s, twisting and rigid in torsion',
    (_, ski) => {
      expect(unsolved(ski)).toEqual([]);
      if (ski.torsion) expect(unsolved(rigidInTorsion(ski))).toEqual([]);
    },
    120_000,
  );
});
