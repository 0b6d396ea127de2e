import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sectionDepth, wedgeSnow } from '../../../core/carve/index.ts';
import { hardness, radians } from './demo.ts';

const law = (depth: number, halfWidth: number, angle: number) => {
  const out = new Float64Array(6);
  wedgeSnow.evaluate(depth, halfWidth, angle, hardness(1), out);
  return out;
};

/** Area and moment of the section below the snow surface, summed strip by strip. */
function strips(depth: number, halfWidth: number, angle: number) {
  const n = 20000;
  const width = (2 * halfWidth) / n;
  let area = 0;
  let moment = 0;
  for (let i = 0; i < n; i++) {
    const s = -halfWidth + (i + 0.5) * width;
    const sunk = Math.max(0, depth - (halfWidth - s) * Math.sin(angle));
    area += sunk * Math.cos(angle) * width;
    moment += sunk * Math.cos(angle) * width * s;
  }
  return { area, moment };
}

describe('wedge snow', () => {
  it('displaces the section found strip by strip, on either edge and fully in', () => {
    for (const [depth, angle] of [
      [0.002, 50],
      [0.03, 20],
      [0.004, 2],
      [0.0005, -1],
      [-0.0005, -3],
      [0.02, 70],
    ]) {
      const out = law(depth, 0.033, radians(angle));
      const { area, moment } = strips(depth, 0.033, radians(angle));
      expect(out[0] / hardness(1)).toBeCloseTo(area, 9);
      expect(out[3] / hardness(1)).toBeCloseTo(moment, 10);
    }
  });

  it('gives the derivatives of its own values', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.001, max: 0.02, noNaN: true }),
        fc.double({ min: -5, max: 80, noNaN: true }),
        (depth, angleDeg) => {
          fc.pre(Math.abs(angleDeg) > 0.2);
          const angle = radians(angleDeg);
          const step = 1e-8;
          const here = law(depth, 0.033, angle);
          const deeper = law(depth + step, 0.033, angle);
          const shallower = law(depth - step, 0.033, angle);
          const steeper = law(depth, 0.033, angle + step);
          const flatter = law(depth, 0.033, angle - step);
          for (const value of [0, 3]) {
            const scale = hardness(1) * 0.033 * (value === 3 ? 0.033 : 1);
            expect((deeper[value] - shallower[value]) / (2 * step) / scale).toBeCloseTo(
              here[value + 1] / scale,
              3,
            );
            expect((steeper[value] - flatter[value]) / (2 * step) / scale).toBeCloseTo(
              here[value + 2] / scale,
              3,
            );
          }
        },
      ),
      { seed: 7 },
    );
  });

  it('inverts to the depth that carries a load', () => {
    for (const [load, angle] of [
      [1000, 60],
      [3000, 3],
      [2000, 0],
    ]) {
      const depth = sectionDepth(load, 0.033, radians(angle), hardness(0.1));
      const out = new Float64Array(6);
      wedgeSnow.evaluate(depth, 0.033, radians(angle), hardness(0.1), out);
      expect(out[0]).toBeCloseTo(load, 6);
    }
  });

  it('twists with the whole half width when the wedge is thin and not at all when flat', () => {
    const thin = law(0.00005, 0.033, radians(60));
    expect(thin[3] / thin[0]).toBeCloseTo(0.033, 4);
    expect(law(0.002, 0.033, 0)[3]).toBe(0);
  });
});
