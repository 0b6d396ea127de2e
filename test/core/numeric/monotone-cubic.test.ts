import fc from 'fast-check';
import { expect, test } from 'vitest';
import { monotoneCubic } from '../../../core/numeric/index.ts';

const stations = fc
  .array(
    fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.double({ min: 1, max: 900, noNaN: true })),
    {
      minLength: 1,
      maxLength: 9,
    },
  )
  .map(rows => {
    let x = 0;
    const xs = rows.map(([step]) => {
      x += step;
      return x;
    });
    return { xs, ys: rows.map(([, y]) => y) };
  });

test('passes through its stations, never leaves the band of its neighbours, holds outside', () => {
  fc.assert(
    fc.property(stations, fc.double({ min: 0, max: 1, noNaN: true }), ({ xs, ys }, t) => {
      const f = monotoneCubic(xs, ys);
      const last = xs.length - 1;
      for (let i = 0; i <= last; i++) expect(f(xs[i])).toBeCloseTo(ys[i], 9);
      expect(f(xs[0] - 3)).toBe(ys[0]);
      expect(f(xs[last] + 3)).toBe(ys[last]);
      for (let i = 0; i < last; i++) {
        const value = f(xs[i] + t * (xs[i + 1] - xs[i]));
        const slack = 1e-9 * Math.max(ys[i], ys[i + 1]);
        expect(value).toBeGreaterThanOrEqual(Math.min(ys[i], ys[i + 1]) - slack);
        expect(value).toBeLessThanOrEqual(Math.max(ys[i], ys[i + 1]) + slack);
      }
    }),
    { numRuns: 80 },
  );
});

test('a straight line is kept straight', () => {
  const f = monotoneCubic([0, 1, 3, 4], [2, 4, 8, 10]);
  for (const x of [0.3, 1.7, 2.2, 3.9]) expect(f(x)).toBeCloseTo(2 + 2 * x, 12);
});

test('stations out of order are refused by name', () => {
  expect(() => monotoneCubic([0, 2, 1], [1, 1, 1])).toThrow(/station 3: 1 found after 2/);
});
