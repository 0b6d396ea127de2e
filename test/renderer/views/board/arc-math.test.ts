import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  missOf,
  pointAlong,
  radiusToward,
  SWEEP,
  startOf,
} from '../../../../renderer/views/board/arc-math.ts';

const radii = fc.double({ min: 2, max: 22, noNaN: true });

test('an arc passes the fall line half-way', () => {
  const { heading, length } = startOf(10);
  expect(length).toBeCloseTo(10 * SWEEP, 12);
  expect(heading + length / 10 / 2).toBeCloseTo(0, 12);
});

test('the radius through a point of an arc is the arc’s', () => {
  fc.assert(
    fc.property(radii, fc.double({ min: 0.1, max: 0.85, noNaN: true }), (radius, share) => {
      const { heading, length } = startOf(radius);
      const { x, y } = pointAlong(radius, heading, share * length);
      expect(radiusToward(heading, x, y)).toBeCloseTo(radius, 6);
    }),
  );
});

test('points no right turn reaches give no radius', () => {
  expect(radiusToward(0, 0, 5)).toBeNull();
  expect(radiusToward(0, -3, 5)).toBeNull();
  expect(radiusToward(0, 3, -5)).toBeNull();
});

test('a right guess misses by nothing, and a worse one by more', () => {
  fc.assert(
    fc.property(radii, radius => {
      expect(missOf(radius, radius)).toBe(0);
      expect(missOf(radius, 1.4 * radius)).toBeGreaterThan(missOf(radius, 1.1 * radius));
    }),
  );
});

test('a quarter circle ends a radius across and a radius down', () => {
  const { x, y } = pointAlong(6, 0, 6 * (Math.PI / 2));
  expect(x).toBeCloseTo(6, 12);
  expect(y).toBeCloseTo(6, 12);
});
