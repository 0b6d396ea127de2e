/**
 * Ideal carving: derived, same physics as Jentschura & Fahrbach, Can. J. Phys. 82 (2004) 249–261 (abstract
 * seen). R_sc 13 m, α 15°, g 9.81.
 */
import { describe, expect, it } from 'vitest';
import { brent } from '../../core/numeric/index.ts';
import { idealRadius } from '../../core/run/index.ts';

const RAD = Math.PI / 180;
const SLOPE = 15 * RAD;
const DIRECTIONS: [number, 1 | -1][] = [
  [90, 1],
  [45, 1],
  [45, -1],
  [0, 1],
  [0, -1],
];
const ROWS: [number, (number | null)[]][] = [
  [5, [12.729, 12.034, 12.999, 11.654, null]],
  [8, [11.108, 9.748, 12.219, 9.173, 12.55]],
  [10, [7.591, 5.774, 9.635, 5.155, 10.431]],
];

describe('the ideal-carving equation [derived]', () => {
  for (const [speed, radii] of ROWS) {
    for (const [i, [beta, half]] of DIRECTIONS.entries()) {
      it(`${speed} m/s, ${half > 0 ? '+' : '-'}${beta}°: ${radii[i] ?? 'none'}`, () => {
        const found = idealRadius(speed, 13, SLOPE, beta * RAD, half);
        const expected = radii[i];
        if (expected === null) expect(found).toBeNull();
        else expect(found).toBeCloseTo(expected, 3);
      });
    }
  }

  it('solves the equation as it is written', () => {
    for (const [beta, half] of DIRECTIONS) {
      const written = (r: number) =>
        Math.sqrt((13 / r) ** 2 - 1) -
        64 / (9.81 * r * Math.cos(SLOPE)) -
        half * Math.tan(SLOPE) * Math.cos(beta * RAD);
      const root = brent(written, 1, 12.9999999, 1e-12);
      expect(idealRadius(8, 13, SLOPE, beta * RAD, half)).toBeCloseTo(root, 9);
    }
  });
});
