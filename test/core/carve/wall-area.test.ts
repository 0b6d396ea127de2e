import { describe, expect, it } from 'vitest';
import {
  buildRadiusTable,
  cosineTurnSurface,
  grooveSolver,
  NAMED_SNOWS,
  tableTurnSurface,
  usualWallStrength,
} from '../../../core/carve/index.ts';
import { wallAreaOf, wallShape } from '../../../core/carve/wall-area.ts';
import { giantSlalomSki, hardness, radians, slalomSki } from './demo.ts';

describe('area of the wall', () => {
  it('counts what is in the snow, to where the edge comes out of it', () => {
    const x = Float64Array.of(0, 1, 2, 4);
    // 1·(2+4)/2, then 4 falls to −4 over a metre: in for half of it; then nothing.
    expect(wallAreaOf(x, Float64Array.of(2, 4, -4, -1))).toBeCloseTo(3 + 1, 12);
    expect(wallAreaOf(x, Float64Array.of(-1, -2, -1, -3))).toBe(0);
    expect(wallAreaOf(x, Float64Array.of(-4, 4, 4, 4))).toBeCloseTo(1 + 4 + 8, 12);
  });

  it('has a shape whose derivatives are those of its values, at the root of the tangent past flat', () => {
    const at = (tilt: number) => {
      const out = new Float64Array(3);
      wallShape(tilt, out);
      return out;
    };
    for (const tilt of [0, 0.02, 0.3, 1, 1.4, 1.6]) {
      const [, slope, bend] = at(tilt);
      const h = 1e-6;
      expect(slope).toBeCloseTo((at(tilt + h)[0]! - at(tilt - h)[0]!) / (2 * h), 4);
      expect(bend! / ((at(tilt + h)[1]! - at(tilt - h)[1]!) / (2 * h))).toBeCloseTo(1, 3);
    }
    expect(at(0.5)[0]! / Math.sqrt(Math.tan(0.5))).toBeCloseTo(1, 2);
  });

  it('of a solved groove is the sum of its depths, and read off the surface to one per cent', () => {
    const table = buildRadiusTable(slalomSki, hardness(10));
    if (table === null || 'ok' in table) throw new Error('no table');
    const surface = tableTurnSurface(table);
    const solver = grooveSolver(slalomSki);
    const six = new Float64Array(6);
    for (const [edge, load] of [
      [12, 500],
      [33, 700],
      [50, 1300],
      [66, 2100],
    ] as const) {
      const solved = solver.solve({ edgeAngle: radians(edge), load, hardness: hardness(10), fore: 0 });
      if (!solved.ok) throw new Error(JSON.stringify(solved.reason));
      let sum = 0;
      for (let i = 0; i + 1 < solved.x.length; i++) {
        const middle = (solved.penetration[i]! + solved.penetration[i + 1]!) / 2;
        sum += Math.max(0, middle) * (solved.x[i + 1]! - solved.x[i]!);
      }
      expect(solved.wallArea / sum).toBeCloseTo(1, 2);
      surface.wallArea(radians(edge), load, six);
      expect(Math.abs(six[0]! / solved.wallArea - 1), `${edge}°, ${load} N`).toBeLessThan(0.01);
    }
  });

  it('of a bent ski pressed hard is once to twice that of an even press: its ends and its tail ride deeper than they carry [derived]', () => {
    const table = buildRadiusTable(giantSlalomSki, hardness(1), {
      edges: [0.1, 0.4, 0.7, 1, 1.2],
      loads: [300, 700, 1500, 3000],
    });
    if (table === null || 'ok' in table) throw new Error('no table');
    const surface = tableTurnSurface(table);
    const even = cosineTurnSurface(20, {
      contactLength: giantSlalomSki.edge.length,
      hardness: hardness(1),
    });
    const [a, b] = [new Float64Array(6), new Float64Array(6)];
    for (const edge of [25, 45, 60]) {
      for (const load of [1500, 2500]) {
        surface.wallArea(radians(edge), load, a);
        even.wallArea(radians(edge), load, b);
        expect(a[0]! / b[0]!).toBeGreaterThan(0.9);
        expect(a[0]! / b[0]!).toBeLessThan(2.2);
      }
    }
  });
});

describe('strength of the wall', () => {
  it('grows with the hardness, more slowly than its root', () => {
    for (const [i, { hardnessNPerMm3: harder }] of NAMED_SNOWS.entries()) {
      if (i === 0) continue;
      const softer = NAMED_SNOWS[i - 1]!.hardnessNPerMm3;
      const ratio = usualWallStrength(hardness(harder)) / usualWallStrength(hardness(softer));
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(Math.sqrt(harder / softer));
    }
    expect(usualWallStrength(hardness(1))).toBeCloseTo(600e3, 6);
  });
});
