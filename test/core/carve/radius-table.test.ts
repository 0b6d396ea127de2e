import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buildRadiusTable,
  grooveSolver,
  type RadiusTable,
  tableKey,
  tableRadius,
  tableTwistTail,
  tableTwistTip,
} from '../../../core/carve/index.ts';
import { hardness, radians, slalomSki } from './demo.ts';

function built(newtonPerMm3: number): RadiusTable {
  const table = buildRadiusTable(slalomSki, hardness(newtonPerMm3));
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

  it('answers within 0.5 % of a direct solution between its points', () => {
    const solver = grooveSolver(slalomSki);
    const points = fc.sample(
      fc.record({
        edge: fc.double({ min: 2, max: 75, noNaN: true }),
        load: fc.double({ min: 200, max: 4000, noNaN: true }),
      }),
      { seed: 11, numRuns: 200 },
    );
    let reluctant = 0;
    for (const { edge, load } of points) {
      const edgeAngle = radians(edge);
      const direct = solver.solve({ edgeAngle, load, hardness: hardness(3), fore: 0 });
      if (!direct.ok) throw new Error(direct.reason);
      const miss = Math.abs(tableRadius(table, edgeAngle, load) / direct.turnRadius - 1);
      // A ski too stiff for its load stands on its ends; R bends sharply where its middle first comes down.
      const standing =
        Math.max(...direct.lineLoad.filter((_, i) => Math.abs(direct.x[i] - 0.66) < 0.2)) < 1000;
      if (standing) {
        reluctant++;
        expect(miss).toBeLessThan(0.03);
      } else expect(miss).toBeLessThan(0.005);
      expect(Math.abs(tableTwistTip(table, edgeAngle, load) - direct.twistTip)).toBeLessThan(radians(0.05));
      expect(Math.abs(tableTwistTail(table, edgeAngle, load) - direct.twistTail)).toBeLessThan(radians(0.05));
    }
    expect(reluctant).toBeLessThan(60);
  });

  it('returns its own values at its points and stays at its border outside', () => {
    const at = tableRadius(table, table.edgeAngles[7], table.loads[5]);
    expect(at).toBeCloseTo(table.radii[7 * 12 + 5], 9);
    expect(tableRadius(table, radians(80), 9000)).toBeCloseTo(table.radii[23 * 12 + 11], 9);
    expect(tableRadius(table, 0, 1)).toBeCloseTo(table.radii[0], 9);
  });

  it('reports progress, stops when told and passes a failure on', () => {
    const shares: number[] = [];
    const small = { edges: [0.3, 0.6], loads: [500, 900], onProgress: (share: number) => shares.push(share) };
    buildRadiusTable(slalomSki, hardness(1), small);
    expect(shares).toEqual([0.5, 1]);
    expect(buildRadiusTable(slalomSki, hardness(1), { ...small, cancelled: () => true })).toBeNull();
    const failure = buildRadiusTable(slalomSki, hardness(1), { ...small, loads: [-5] });
    expect(failure).toMatchObject({ ok: false, reason: expect.stringMatching(/^load: -5 N/) });
  });

  it('is keyed by content', () => {
    const key = tableKey(slalomSki, hardness(1));
    expect(tableKey({ ...slalomSki }, hardness(1))).toBe(key);
    expect(tableKey(slalomSki, hardness(1.01))).not.toBe(key);
    expect(tableKey({ ...slalomSki, torsion: null }, hardness(1))).not.toBe(key);
    expect(tableKey({ ...slalomSki, bending: x => slalomSki.bending(x) + 1 }, hardness(1))).not.toBe(key);
    expect(tableKey(slalomSki, hardness(1), { fore: 0.02 })).not.toBe(key);
  });
});
