import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DOWN_WITHIN, flatTable, type Profile } from '../../../core/flex/index.ts';

const L = 1.36;
const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const tent =
  (end: number, middle: number): Profile =>
  x =>
    end + (middle - end) * (1 - Math.abs((2 * x) / L - 1));

test('reactions push, gaps are open, both never at once, and forces and moments balance', () => {
  fc.assert(
    fc.property(share(5, 200), share(150, 700), share(0.3, 1.05), share(0, 1500), (end, middle, at, load) => {
      const table = flatTable(tent(end, middle), { length: L, camber: 0.008, at, elements: 60 });
      const { gap, reaction } = table.press(load);
      let force = 0;
      let moment = 0;
      for (let i = 0; i < gap.length; i++) {
        expect(gap[i]).toBeGreaterThanOrEqual(0);
        expect(reaction[i]).toBeGreaterThan(-1e-4);
        if (reaction[i] > 1e-4) expect(gap[i]).toBeLessThan(1e-9);
        force += reaction[i];
        moment += reaction[i] * table.x[i];
      }
      expect(force).toBeCloseTo(load, 4);
      expect(moment).toBeCloseTo(load * at, 4);
    }),
    { numRuns: 40 },
  );
});

test('linear until first touch, stiffer after', () => {
  const table = flatTable(tent(30, 400), { length: L, camber: 0.008, at: 0.6 });
  const f1 = table.firstTouch;
  const before = table.press(0.5 * f1).loadDeflection;
  expect(table.press(0.99 * f1).loadDeflection / before).toBeCloseTo(1.98, 6);
  const after = table.press(1.5 * f1).loadDeflection;
  expect(after).toBeLessThan(3 * before);
  expect(after).toBeGreaterThanOrEqual(table.press(f1).loadDeflection - 1e-12);
});

test('first touch grows with camber and stiffness in proportion', () => {
  fc.assert(
    fc.property(share(0.001, 0.02), share(0.2, 5), (camber, factor) => {
      const setup = { length: L, camber, at: 0.64 };
      const one = flatTable(tent(50, 300), setup).firstTouch;
      expect(flatTable(tent(50 * factor, 300 * factor), setup).firstTouch / one).toBeCloseTo(factor, 6);
      expect(flatTable(tent(50, 300), { ...setup, camber: 2 * camber }).firstTouch / one).toBeCloseTo(2, 6);
    }),
    { numRuns: 10 },
  );
});

test('a soft-ended ski goes down whole, and the flattening load is the least that does it', () => {
  const table = flatTable(tent(8, 400), { length: L, camber: 0.006, at: L / 2 });
  const load = table.flatten!;
  expect(load).toBeGreaterThanOrEqual(table.firstTouch * 0.9);
  expect(Math.max(...table.press(load * 1.001).gap)).toBeLessThanOrEqual(DOWN_WITHIN);
  expect(Math.max(...table.press(load * 0.99).gap)).toBeGreaterThan(DOWN_WITHIN);
});

test('a stiff-ended ski keeps a gap and says so', () => {
  const table = flatTable(() => 500, { length: L, camber: 0.008, at: L / 2 });
  expect(table.flatten).toBeNull();
  expect(table.gapLeft).toBeGreaterThan(DOWN_WITHIN);
});

test('without camber nothing is needed to flatten it', () => {
  const table = flatTable(() => 500, { length: L, camber: 0, at: 0.6 });
  expect([table.firstTouch, table.flatten, table.gapLeft]).toEqual([0, 0, 0]);
  expect(table.press(300).loadDeflection).toBeCloseTo(0, 12);
});

test('a press beside the ski and a negative camber are refused by name', () => {
  expect(() => flatTable(() => 500, { length: L, camber: 0.01, at: 1.5 })).toThrow(
    expect.objectContaining({ field: 'at' }),
  );
  expect(() => flatTable(() => 500, { length: L, camber: -0.01, at: 0.5 })).toThrow(
    expect.objectContaining({ field: 'camber' }),
  );
});
