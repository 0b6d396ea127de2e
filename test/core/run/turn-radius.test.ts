import { describe, expect, it } from 'vitest';
import { cosineTurn, evenSlope, linkedTurns, solveRun, tableTurn } from '../../../core/run/index.ts';
import { demoRadius, demoTable } from './demo-table.ts';

const RAD = Math.PI / 180;

describe('a table of radii', () => {
  const turn = tableTurn(demoTable());

  it('gives the table back at its nodes', () => {
    const table = demoTable();
    for (let i = 0; i < table.edgeAngles.length; i++) {
      for (let j = 0; j < table.loads.length; j++) {
        const k = i * table.loads.length + j;
        expect(turn.radius(table.edgeAngles[i], table.loads[j])).toBeCloseTo(table.radii[k], 10);
        expect(turn.twistTip?.(table.edgeAngles[i], table.loads[j])).toBeCloseTo(table.twistTips[k], 12);
        expect(turn.twistTail?.(table.edgeAngles[i], table.loads[j])).toBeCloseTo(table.twistTails[k], 12);
      }
    }
  });

  it('is within 0.3 % between them', () => {
    for (let a = 4; a < 65; a += 1.3) {
      for (let f = 250; f < 3000; f *= 1.3) {
        expect(turn.radius(a * RAD, f) / demoRadius(13, a * RAD, f)).toBeCloseTo(1, 2.5);
      }
    }
  });

  it('has no kink in edge angle where cells meet', () => {
    const slope = (a: number) => (turn.radius(a + 1e-6, 900) - turn.radius(a - 1e-6, 900)) / 2e-6;
    for (const a of demoTable().edgeAngles.slice(1, -1)) {
      expect(slope(a - 2e-6)).toBeCloseTo(slope(a + 2e-6), 2);
    }
  });

  it('stays finite outside and closes as the cosine beyond the last angle', () => {
    expect(turn.radius(0, 10)).toBeCloseTo(turn.radius(2 * RAD, 200), 10);
    expect(turn.radius(0.5, 1e5)).toBeCloseTo(turn.radius(0.5, 3200), 10);
    const ratio = turn.radius(80 * RAD, 800) / turn.radius(72 * RAD, 800);
    expect(ratio).toBeCloseTo(Math.cos(80 * RAD) / Math.cos(72 * RAD), 10);
  });

  it('solves radius and load together in a run', () => {
    const run = solveRun({
      turn,
      profile: evenSlope(12 * RAD),
      programme: linkedTurns({ peakEdge: 60 * RAD, period: 3, turns: 2 }),
      mass: 80,
      friction: 0.04,
      dragArea: 0.45,
      airDensity: 1.1,
      startSpeed: 6,
    });
    if (!run.ok) throw new Error(run.limit);
    const { track } = run;
    expect(track.summary.energyErrorRatio).toBeLessThan(1e-6);
    let tested = 0;
    for (let i = 0; i < track.t.length; i++) {
      const edge = Math.abs(track.edge[i]);
      if (edge < 20 * RAD) continue;
      const own = Math.abs(track.curvature[i] - track.mismatch[i]);
      expect(1 / own / turn.radius(edge, 0.7 * track.load[i])).toBeCloseTo(1, 3);
      tested++;
    }
    expect(tested).toBeGreaterThan(100);
  });

  it('refuses a table with a hole, naming the column', () => {
    const table = demoTable();
    table.radii[7] = Number.NaN;
    expect(() => tableTurn(table)).toThrow(expect.objectContaining({ field: 'radii' }));
    expect(() => tableTurn({ ...demoTable(), loads: Float64Array.of(5, 5) })).toThrow(
      expect.objectContaining({ field: 'loads' }),
    );
  });
});

it('the cosine rule refuses a radius that is not one', () => {
  expect(() => cosineTurn(0)).toThrow(expect.objectContaining({ field: 'sidecutRadius' }));
});
