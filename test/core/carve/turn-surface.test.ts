import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buildRadiusTable,
  type CarvingSki,
  cosineTurnSurface,
  type RadiusTable,
  type TurnSurface,
  tableLookup,
  tableTurnSurface,
} from '../../../core/carve/index.ts';
import { giantSlalomSki, hardness, radians, slalomSki } from './demo.ts';
import { demoPairs } from './demo-pairs.ts';

function built(newtonPerMm3: number, ski: CarvingSki): RadiusTable {
  const table = buildRadiusTable(ski, hardness(newtonPerMm3));
  if (table === null || 'ok' in table) throw new Error('no table');
  return table;
}

const soft = built(0.1, slalomSki);
const groomed = built(1, giantSlalomSki);
const surfaces: readonly (readonly [string, TurnSurface])[] = [
  ['cosine rule', cosineTurnSurface(12.5, { contactLength: 1.4, hardness: hardness(1) })],
  ['slalom ski on soft snow, folds and all', tableTurnSurface(soft)],
  ['giant slalom ski on groomed snow', tableTurnSurface(groomed)],
];

const places = fc.sample(
  fc.record({
    edge: fc.double({ min: -85, max: 85, noNaN: true }),
    logLoad: fc.double({ min: Math.log(50), max: Math.log(12000), noNaN: true }),
  }),
  { seed: 41, numRuns: 300 },
);

const both = surfaces.flatMap(([name, surface]) => [
  [`curvature, ${name}`, surface.curvature] as const,
  [`wall, ${name}`, surface.wallArea] as const,
]);

describe.each(both)('turn surface: %s', (_name, write) => {
  const at = (edgeAngle: number, load: number) => {
    const out = new Float64Array(6);
    write(edgeAngle, load, out);
    return out;
  };

  it('its derivatives are those of its values', () => {
    for (const { edge, logLoad } of places) {
      const edgeAngle = radians(edge);
      const load = Math.exp(logLoad);
      const [k, ku, kf, kuu, kuf, kff] = at(edgeAngle, load);
      const du = 1e-5;
      const df = 1e-5 * load;
      const up = at(edgeAngle + du, load);
      const down = at(edgeAngle - du, load);
      const more = at(edgeAngle, load + df);
      const less = at(edgeAngle, load - df);
      // Shares of κ: 1/cosθ itself has large derivatives at steep angles, so the allowance grows with them.
      const near = (found: number, difference: number, scale: number) =>
        expect(Math.abs(found - difference) / (k * scale + Math.abs(found))).toBeLessThan(2e-4);
      near(ku, (up[0] - down[0]) / (2 * du), 1);
      near(kf, (more[0] - less[0]) / (2 * df), 1 / load);
      near(kuu, (up[1] - down[1]) / (2 * du), 10);
      near(kuf, (up[2] - down[2]) / (2 * du), 10 / load);
      near(kuf, (more[1] - less[1]) / (2 * df), 10 / load);
      near(kff, (more[2] - less[2]) / (2 * df), 10 / load ** 2);
    }
  });

  it('is even in the edge angle', () => {
    for (const { edge, logLoad } of places.slice(0, 60)) {
      const right = at(radians(edge), Math.exp(logLoad));
      const left = at(-radians(edge), Math.exp(logLoad));
      const mirrored = [right[0], -right[1], right[2], right[3], -right[4], right[5]];
      mirrored.forEach((value, k) => {
        expect(left[k]).toBeCloseTo(value, 12);
      });
    }
    const [k, ku, , , kuf] = at(0, 900);
    expect(Math.abs(ku)).toBeLessThan(1e-12 * k);
    expect(Math.abs(kuf)).toBeLessThan(1e-12 * k);
  });

  it('has no break in value, slopes or second derivatives along either axis', () => {
    // Steps of a thousandth: what lies between two of them is no more than a third derivative allows; a kink in
    // the slope, or a jump of a second derivative, would stand out by orders of magnitude against its neighbours.
    const worstJump = (along: (t: number) => Float64Array, which: number, scale: number) => {
      const jumps: number[] = [];
      let last = along(0)[which];
      for (let step = 1; step <= 4000; step++) {
        const now = along(step / 4000)[which];
        jumps.push(Math.abs(now - last));
        last = now;
      }
      return Math.max(...jumps) / scale;
    };
    const byAngle = (t: number) => at(radians(-30 + 114 * t), 700);
    const byLoad = (t: number) => at(radians(48), 100 * 100 ** t);
    const greatest = (along: (t: number) => Float64Array, which: number) =>
      Math.max(...Array.from({ length: 400 }, (_, i) => Math.abs(along(i / 400)[which])), 1e-12);
    for (const which of [0, 1, 3]) {
      expect(worstJump(byAngle, which, greatest(byAngle, which))).toBeLessThan(0.02);
    }
    for (const which of [0, 2, 5]) {
      expect(worstJump(byLoad, which, greatest(byLoad, which))).toBeLessThan(0.03);
    }
  });

  it('is finite and positive from 1 to 20 000 N, up to 89 degrees and past it', () => {
    for (const edge of [0, 0.3, 1.9, 2, 2.1, 40, 74.9, 75, 76, 80, 89, 89.5, 95]) {
      for (const load of [0.1, 1, 30, 199, 200, 201, 1000, 4000, 4001, 20_000, 1e9]) {
        const out = at(radians(edge), load);
        expect(out[0]).toBeGreaterThan(0);
        expect(out.every(Number.isFinite)).toBe(true);
      }
    }
  });
});

describe('turn surface of a table', () => {
  const SNOWS = [0.1, 1, 10, 30];

  it.each(demoPairs.map(([name, ski], i) => [name, SNOWS[i % SNOWS.length], ski] as const))(
    '%s, snow of %s N/mm³: within half a per cent of the table where it is not smoothed',
    (_name, snow, ski) => {
      const table = built(snow, ski);
      const lookup = tableLookup(table);
      const surface = tableTurnSurface(table);
      const out = new Float64Array(6);
      const misses: string[] = [];
      let request = 0;
      let smoothed = 0;
      for (let edge = 2; edge <= 75; edge += 1.07) {
        for (let share = 0; share <= 1; share += 0.021) {
          const load = 200 * 20 ** share;
          request++;
          surface.curvature(radians(edge), load, out);
          const miss = Math.abs(out[0] * lookup.radius(radians(edge), load) - 1);
          if (surface.smoothedAt(radians(edge), load)) smoothed++;
          else if (!(miss < 0.005)) {
            misses.push(`${edge.toFixed(1)} degrees, ${load.toFixed(0)} N: ${(100 * miss).toFixed(2)} %`);
          }
        }
      }
      expect(misses).toEqual([]);
      // Soft snow has folds at all steep edge angles; on firm snow next to nothing is smoothed.
      expect(smoothed).toBeLessThan((snow < 0.3 ? 0.25 : 0.1) * request);
    },
  );

  it('lies between the values around where it smooths a jump, to two per cent', () => {
    const surface = tableTurnSurface(soft);
    const lookup = tableLookup(soft);
    const out = new Float64Array(6);
    let reported = 0;
    for (let edge = 10; edge <= 66; edge += 1.3) {
      for (let load = 300; load < 3000; load *= 1.06) {
        if (!surface.smoothedAt(radians(edge), load)) continue;
        reported++;
        let least = Number.POSITIVE_INFINITY;
        let most = 0;
        for (let de = -9; de <= 9; de += 0.9) {
          for (let dl = -0.65; dl <= 0.65; dl += 0.065) {
            const near = radians(Math.min(Math.max(edge + de, 2), 75));
            const bent = Math.cos(near) / lookup.radius(near, load * Math.exp(dl));
            least = Math.min(least, bent);
            most = Math.max(most, bent);
          }
        }
        surface.curvature(radians(edge), load, out);
        const bent = out[0] * Math.cos(radians(edge));
        expect(bent).toBeGreaterThan(0.98 * least);
        expect(bent).toBeLessThan(1.02 * most);
      }
    }
    expect(reported).toBeGreaterThan(50);
  });

  it('says that it smooths where the table is steep', () => {
    const surface = tableTurnSurface(soft);
    const lookup = tableLookup(soft);
    let steep = 0;
    let reported = 0;
    for (let edge = 3; edge <= 74; edge += 0.5) {
      for (let load = 210; load < 3900; load *= 1.03) {
        if (!lookup.steepAt(radians(edge), load)) continue;
        steep++;
        if (surface.smoothedAt(radians(edge), load)) reported++;
      }
    }
    expect(steep).toBeGreaterThan(20);
    expect(reported).toBe(steep);
  });

  it('stays level beyond the loads and closes as the cosine rule does beyond the last edge angle', () => {
    const surface = tableTurnSurface(groomed);
    const out = new Float64Array(6);
    surface.curvature(radians(83), 9000, out);
    const [k, ku, kf, , , kff] = out;
    expect(kf).toBeCloseTo(0, 12);
    expect(kff).toBeCloseTo(0, 12);
    expect(ku / k).toBeCloseTo(Math.tan(radians(83)), 9);
    const border = 1 / groomed.radii[groomed.radii.length - 1];
    const closed = Math.cos(radians(83)) / Math.cos(radians(75));
    expect(Math.abs((k * closed) / border - 1)).toBeLessThan(0.15);
    surface.curvature(radians(40), 20, out);
    expect(out[2]).toBeCloseTo(0, 12);
  });

  it('takes any table of two or more edge angles and loads, and says what it does not take', () => {
    const small: RadiusTable = {
      edgeAngles: Float64Array.of(0.1, 1.1),
      loads: Float64Array.of(400, 1600),
      radii: Float64Array.of(12, 11.5, 6, 5.5),
      twistTips: new Float64Array(4),
      twistTails: new Float64Array(4),
      wallAreas: Float64Array.of(1e-3, 2e-3, 4e-3, 8e-3),
      hardness: 1e9,
    };
    const out = new Float64Array(6);
    tableTurnSurface(small).curvature(0.1, 400, out);
    expect(Math.abs(12 * out[0] - 1)).toBeLessThan(0.005);
    expect(() => tableTurnSurface({ ...small, edgeAngles: Float64Array.of(0.1, 1.57) })).toThrow(
      expect.objectContaining({ field: 'edgeAngles' }),
    );
    expect(() => cosineTurnSurface(-3)).toThrow(expect.objectContaining({ field: 'sidecutRadius' }));
  });
});
