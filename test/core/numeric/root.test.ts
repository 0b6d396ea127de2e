import fc from 'fast-check';
import { expect, it } from 'vitest';
import { brent, firstWhere } from '../../../core/numeric/index.ts';

it('finds the fixed point of the cosine', () => {
  expect(brent(x => Math.cos(x) - x, 0, 1, 1e-14)).toBeCloseTo(0.7390851332151607, 13);
});

it('finds any cubic root that is bracketed', () => {
  fc.assert(
    fc.property(fc.double({ min: -5, max: 5, noNaN: true }), r => {
      const x = brent(u => (u - r) * ((u - r) ** 2 + 0.3), -11, 12, 1e-13);
      expect(Math.abs(x - r)).toBeLessThan(1e-11);
    }),
  );
});

it('returns an end that is already a root', () => {
  expect(brent(x => x, 0, 1)).toBe(0);
  expect(brent(x => x - 1, 0, 1)).toBe(1);
});

it('names the bracket when the signs agree', () => {
  expect(() => brent(x => x * x + 1, -1, 2)).toThrow(/f\(-1\) = 2 and f\(2\) = 5/);
});

it('finds where something holds from, never short of it', () => {
  fc.assert(
    fc.property(fc.double({ min: -3, max: 3, noNaN: true }), from => {
      const at = firstWhere(x => x >= from, -4, 4);
      expect(at).toBeGreaterThanOrEqual(from);
      expect(at - from).toBeLessThan(2e-15);
      const near = firstWhere(x => x >= from, -4, 4, 1e-3);
      expect(near).toBeGreaterThanOrEqual(from);
      expect(near - from).toBeLessThan(1e-3);
    }),
  );
  expect(firstWhere(() => false, 0, 2)).toBe(2);
  expect(firstWhere(() => true, 0, 2, 1e-9)).toBeLessThan(1e-9);
});
