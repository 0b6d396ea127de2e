import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type CarvingSki, grooveSolver } from '../../../core/carve/index.ts';
import { bendingOf, torsionOf } from '../../../core/flex/index.ts';
import { readPair, skiOf } from '../../../core/pair/index.ts';
import { edgeCurve } from '../../../core/shape/index.ts';
import { giantSlalomSki, hardness, radians, rigidInTorsion, slalomSki } from './demo.ts';

const EDGES = [2, 20, 45, 60, 75];
const LOADS = [200, 900, 4000];
const SNOWS = [0.04, 1, 10, 90];

const folder = new URL('../../../renderer/demo/', import.meta.url);
const demoPairs = readdirSync(folder).filter(name => name.endsWith('.pair.json'));

function demoSki(name: string): CarvingSki {
  const read = readPair(readFileSync(new URL(name, folder), 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${read.problems.map(String).join(', ')}`);
  const ski = skiOf(read.pair);
  const bending = bendingOf(ski);
  if (!bending) throw new Error(`${name} has no bending stiffness`);
  const { camber, bootCentre, soleLength } = ski;
  return { edge: edgeCurve(ski), bending, torsion: torsionOf(ski), camber, bootCentre, soleLength };
}

function unsolved(ski: CarvingSki): string[] {
  const failures: string[] = [];
  const solver = grooveSolver(ski);
  for (const edge of EDGES) {
    for (const load of LOADS) {
      for (const snow of SNOWS) {
        const answer = solver.solve({ edgeAngle: radians(edge), load, hardness: hardness(snow), fore: 0 });
        if (!answer.ok) failures.push(answer.reason);
        else if (!(answer.residual <= 1e-8))
          failures.push(`${edge}°, ${load} N, ${snow}: ${answer.residual}`);
      }
    }
  }
  return failures;
}

describe('2–75°, 200–4000 N, 0.04–90 N/mm³ without one failure', () => {
  it.each([
    ['invented slalom ski', slalomSki],
    ['invented giant slalom ski', giantSlalomSki],
  ])('%s, twisting and rigid in torsion', (_, ski) => {
    expect(unsolved(ski)).toEqual([]);
    expect(unsolved(rigidInTorsion(ski))).toEqual([]);
  });

  it('finds the demo pairs', () => {
    expect(demoPairs.length).toBeGreaterThan(3);
  });

  it.each(demoPairs)('%s', name => {
    const ski = demoSki(name);
    expect(unsolved(ski)).toEqual([]);
    if (ski.torsion) expect(unsolved(rigidInTorsion(ski))).toEqual([]);
  });
});
