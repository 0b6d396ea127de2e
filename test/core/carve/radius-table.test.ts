// @module-tag slow
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buildRadiusTable,
  type CarvingSki,
  grooveSolver,
  type RadiusTable,
  tableLookup,
  tableRadius,
  tableTwistTail,
  tableTwistTip,
} from '../../../core/carve/index.ts';
import { giantSlalomSki, hardness, radians, rigidInTorsion, slalomSki } from './demo.ts';
import { demoPairs } from './demo-pairs.ts';

function built(newtonPerMm3: number, ski: CarvingSki = slalomSki): RadiusTable {
  const table = buildRadiusTable(ski, hardness(newtonPerMm3));
  if (table === null || 'ok' in table) throw new Error('no table');
  return table;
}

describe('radius table', () => {
  const table = built(3);

  it('holds the default grid of 24 edge angles and 12 loads', () => {
    expect(table.edgeAngles.length * table.loads.length).toBe(table.radii.length);
    expect(table.radii.length).toBe(288);
    expect(table.edgeAngles[0]).toBeCloseTo(radians(2), 12);
    expect(table.loads[11]).toBeCloseTo(4000, 9);
  });

  it('returns its own values at its points and stays at its border outside, by the cosine rule beyond its last edge angle', () => {
    const at = tableRadius(table, table.edgeAngles[7], table.loads[5]);
    expect(at).toBeCloseTo(table.radii[7 * 12 + 5], 9);
    expect(tableRadius(table, radians(75), 9000)).toBeCloseTo(table.radii[23 * 12 + 11], 9);
    const closed = Math.cos(radians(80)) / Math.cos(radians(75));
    expect(tableRadius(table, radians(80), 9000)).toBeCloseTo(closed * table.radii[23 * 12 + 11], 9);
    expect(tableRadius(table, 0, 1)).toBeCloseTo(table.radii[0], 9);
  });

  it('reports progress, stops when told and passes a failure on', () => {
    const shares: number[] = [];
    const small = { edges: [0.3, 0.6], loads: [500, 900], onProgress: (share: number) => shares.push(share) };
    buildRadiusTable(slalomSki, hardness(1), small);
    expect(shares).toEqual([0.375, 0.75, 1]);
    expect(buildRadiusTable(slalomSki, hardness(1), { ...small, cancelled: () => true })).toBeNull();
    const failure = buildRadiusTable(slalomSki, hardness(1), { ...small, loads: [-5] });
    expect(failure).toMatchObject({ ok: false, reason: { field: 'load', found: { value: -5 } } });
  });
});

const SNOWS = [90, 0.3, 10, 0.1, 3, 30, 0.04, 1];

/**
 * Random points against direct solutions. Not held to 0.4 %: the smallest parts of cells (0.8 degrees by 3.5 % of
 * the load) marked `steepAt`, across which R itself changes by over 2 %. They lie along two lines of loads, where
 * the middle of a ski that stood on its ends comes down (light loads on steep edges), and where it breaks out of
 * the groove its tip cuts, which at steep edge angles is a jump of the equilibrium itself (soft snow).
 */
describe('between its points', () => {
  it.each([
    ['invented slalom ski, snow of 3 N/mm³', slalomSki, 3] as const,
    [
      'invented giant slalom ski, rigid in torsion, snow of 0.3 N/mm³',
      rigidInTorsion(giantSlalomSki),
      0.3,
    ] as const,
    ...demoPairs.flatMap(([name, ski], i) =>
      [0, 5].map(next => {
        const snow = SNOWS[(i + next) % SNOWS.length];
        return [`${name}, snow of ${snow} N/mm³`, ski, snow] as const;
      }),
    ),
  ])(
    '%s: R is within 0.4 per cent of a direct solution',
    (_name, ski, snow) => {
      const table = built(snow, ski);
      const lookup = tableLookup(table);
      const solver = grooveSolver(ski);
      const points = fc.sample(
        fc.record({
          edge: fc.double({ min: 2, max: 75, noNaN: true }),
          logLoad: fc.double({ min: Math.log(200), max: Math.log(4000), noNaN: true }),
        }),
        { seed: 29, numRuns: 150 },
      );
      const misses: string[] = [];
      let steep = 0;
      for (const { edge, logLoad } of points) {
        const edgeAngle = radians(edge);
        const load = Math.exp(logLoad);
        const direct = solver.solve({ edgeAngle, load, hardness: hardness(snow), fore: 0 });
        if (!direct.ok) throw new Error(JSON.stringify(direct.reason));
        const miss = Math.abs(tableRadius(table, edgeAngle, load) / direct.turnRadius - 1);
        const isSteep = lookup.steepAt(edgeAngle, load);
        if (isSteep) steep++;
        if (!(miss < (isSteep ? 0.05 : 0.004))) {
          misses.push(`${edge.toFixed(1)} degrees, ${load.toFixed(0)} N: ${(100 * miss).toFixed(2)} %`);
        }
      }
      expect(misses).toEqual([]);
      expect(steep).toBeLessThanOrEqual(0.04 * points.length);
    },
    60_000,
  );

  it('twists are within 0.05 degrees', () => {
    const table = built(3);
    const solver = grooveSolver(slalomSki);
    for (const edge of [8.3, 31, 52.7, 63]) {
      for (const load of [450, 1150, 2900]) {
        const edgeAngle = radians(edge);
        const direct = solver.solve({ edgeAngle, load, hardness: hardness(3), fore: 0 });
        if (!direct.ok) throw new Error(JSON.stringify(direct.reason));
        expect(Math.abs(tableTwistTip(table, edgeAngle, load) - direct.twistTip)).toBeLessThan(radians(0.05));
        expect(Math.abs(tableTwistTail(table, edgeAngle, load) - direct.twistTail)).toBeLessThan(
          radians(0.05),
        );
      }
    }
  });

  it('passes between threads whole', () => {
    const table = built(3);
    const copy = structuredClone(table);
    expect(copy.finer?.size).toBe(table.finer?.size);
    expect(tableRadius(copy, radians(66), 300)).toBe(tableRadius(table, radians(66), 300));
  });
});
