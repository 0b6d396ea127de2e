import { describe, expect, it } from 'vitest';
import { skiOf } from '../../../core/pair/index.ts';
import { sidecut } from '../../../core/shape/index.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import { jobs } from '../../../renderer/work/jobs.ts';

const DEGREE = Math.PI / 180;
const larch = demoPairs[0]!;
const conditions = [30, 40, 50].map(degrees => ({
  edgeAngle: degrees * DEGREE,
  load: 1200,
  hardness: 1e9,
  fore: 0,
}));

describe('jobs', () => {
  it('solve grooves one after another, with progress, as plain data', () => {
    const shares: number[] = [];
    const answers = structuredClone(jobs.groove({ pair: larch, conditions }, share => shares.push(share)));
    expect(shares).toEqual([1 / 3, 2 / 3, 1]);
    const radii = answers.map(answer => (answer.ok ? answer.turnRadius : Number.NaN));
    expect(radii[0]!).toBeGreaterThan(radii[1]!);
    expect(radii[1]!).toBeGreaterThan(radii[2]!);
  });

  it('say what is missing to carve', () => {
    const { bending: _, ...bare } = larch;
    expect(() => jobs.groove({ pair: bare, conditions }, () => {})).toThrow(
      /Larch 155: bending: nothing found/,
    );
  });

  it('run down a slope by the cosine rule', () => {
    const track = structuredClone(
      jobs.linkedRun({
        turn: { sidecutRadius: sidecut(skiOf(larch)).radius },
        slopeAngle: 12 * DEGREE,
        peakEdge: 45 * DEGREE,
        period: 4,
        turns: 2,
        mass: 75,
        friction: 0.05,
        dragArea: 0.4,
        airDensity: 1.1,
        startSpeed: 6,
        baseBevel: 0,
        contactLength: 1.36,
      }),
    );
    expect(track.t.length).toBeGreaterThan(10);
    expect(track.distance.at(-1)!).toBeGreaterThan(10);
  });
});
