import { describe, expect, it } from 'vitest';
import { wedgeDepth, wedgeSnow } from '../../core/carve/index.ts';

// Mössner et al., J. Glaciol. (2013) [seen]: force proportional to displaced volume, F = H_V·V.
// Wedge form per length f = H_V e²/(2 tanθ) and the depths below [derived].
// The list rounds twice at 30° on 10 N/mm³ (1.0746 mm → 1.075 → 1.08); half a last digit more covers it.
const hardnesses = [0.1, 1, 10, 30];
const depthsAt1NPerMm: [number, number[]][] = [
  [60, [5.89, 1.86, 0.59, 0.34]],
  [30, [3.4, 1.08, 0.34, 0.2]],
];

describe('wedge depths at 1 N/mm', () => {
  for (const [degrees, depths] of depthsAt1NPerMm) {
    it(`match the derived table at ${degrees}°`, () => {
      const angle = (degrees * Math.PI) / 180;
      depths.forEach((expected, i) => {
        const depth = wedgeDepth(1000, angle, hardnesses[i] * 1e9);
        expect(Math.abs(depth * 1000 - expected)).toBeLessThan(0.0055);
        const out = new Float64Array(6);
        wedgeSnow.evaluate(depth, 0.033, angle, hardnesses[i] * 1e9, out);
        expect(out[0]).toBeCloseTo(1000, 6);
      });
    });
  }
});
