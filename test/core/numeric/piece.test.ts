import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pieceAt } from '../../../core/numeric/index.ts';

it('holds the value between its ends', () => {
  const ascending = fc.uniqueArray(fc.double({ min: -9, max: 9, noNaN: true }), {
    minLength: 2,
    maxLength: 40,
  });
  fc.assert(
    fc.property(ascending, fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), (list, share) => {
      const x = Float64Array.from(list).sort();
      const at = x[0] + share * (x[x.length - 1] - x[0]);
      const i = pieceAt(x, at);
      expect(x[i]).toBeLessThanOrEqual(at);
      if (at < x[x.length - 1]) expect(at).toBeLessThan(x[i + 1]);
    }),
  );
});

it('is the first or the last piece outside', () => {
  expect(pieceAt([1, 2, 3, 4], 0)).toBe(0);
  expect(pieceAt([1, 2, 3, 4], 4)).toBe(2);
  expect(pieceAt([1, 2, 3, 4], 9)).toBe(2);
  // Where two are the same, the later piece begins there.
  expect(pieceAt([0, 1, 1, 2], 1)).toBe(2);
});
