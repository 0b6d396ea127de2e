import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { expect, test } from 'vitest';
import {
  benchPress,
  bendingCompliance,
  bendingMatrix,
  bendingOf,
  gaussValues,
  meshThrough,
  nodeAt,
  solveSupported,
  springs,
  torsionalSpring,
  twistBench,
} from '../../../core/flex/index.ts';
import { multiplySymmetric } from '../../../core/numeric/index.ts';
import { denseRows } from './dense.ts';
import { invented } from './ski.ts';

const L = 1.36;
const profile = bendingOf(invented())!;
const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('the banded solution is the dense one', () => {
  const x = meshThrough(0, L, [0.5], 24);
  const load = new Float64Array(2 * x.length);
  load[2 * nodeAt(x, 0.5)] = 100;
  const band = bendingMatrix(x, gaussValues(profile, x));
  // Supported on springs, so that neither solver is handed the other's treatment of supports.
  band.data[band.half] += 1e7;
  band.data[(2 * x.length - 2) * (band.half + 1) + band.half] += 1e7;
  const expected = (lusolve(denseRows(band), Array.from(load)) as number[][]).map(row => row[0]);
  const u = solveSupported(band, load, []);
  const scale = Math.max(...expected.map(Math.abs));
  for (let i = 0; i < u.length; i++) expect(Math.abs(u[i] - expected[i]) / scale).toBeLessThan(1e-8);
});

test('a free beam resists neither lifting nor turning', () => {
  const x = meshThrough(0, L, [0.31, 0.64]);
  const band = bendingMatrix(x, gaussValues(profile, x));
  const out = new Float64Array(band.size);
  const stiffest = Math.max(...band.data);
  for (const motion of [x.map(() => 1), x]) {
    const slope = motion === x ? 1 : 0;
    const u = Float64Array.from({ length: band.size }, (_, i) => (i % 2 ? slope : motion[i >> 1]));
    for (const force of multiplySymmetric(band, u, out))
      expect(Math.abs(force) / stiffest).toBeLessThan(1e-12);
  }
  expect(() => solveSupported(band, out, [[0, 0]])).toThrow(expect.objectContaining({ field: 'supports' }));
});

test('mesh nodes stand exactly on the marks', () => {
  fc.assert(
    fc.property(fc.array(share(-0.2, 1.6), { maxLength: 5 }), marks => {
      const x = meshThrough(0, L, marks, 60);
      for (let i = 1; i < x.length; i++) expect(x[i]).toBeGreaterThan(x[i - 1]);
      expect([x[0], x[x.length - 1]]).toEqual([0, L]);
      for (const m of marks) if (m > 0 && m < L) expect(Math.abs(x[nodeAt(x, m)] - m)).toBeLessThan(1e-8);
    }),
  );
});

test('beam elements agree with the unit-load theorem for any supports and load', () => {
  fc.assert(
    fc.property(share(0, 0.3), share(0.9, L), share(0.1, 0.9), (rear, front, t) => {
      const at = rear + t * (front - rear);
      const bench = benchPress(profile, { length: L, rear, front, at, load: 250 });
      expect(bench.loadDeflection / (250 * bendingCompliance(profile, rear, front, at))).toBeCloseTo(1, 5);
      expect(bench.deflection[nodeAt(bench.x, rear)]).toBeCloseTo(0, 14);
      expect(bench.deflection[nodeAt(bench.x, front)]).toBeCloseTo(0, 14);
    }),
    { numRuns: 30 },
  );
});

test('overhanging ends stay straight and rise', () => {
  const bench = benchPress(profile, { length: L, rear: 0.2, front: 1.2, at: 0.6, load: 300 });
  const support = nodeAt(bench.x, 0.2);
  expect(bench.deflection[0]).toBeLessThan(0);
  expect(bench.slope[0]).toBeCloseTo(bench.slope[support], 9);
  expect(bench.deflection[0]).toBeCloseTo(-0.2 * bench.slope[support], 9);
});

test('deflection is linear in the load', () => {
  fc.assert(
    fc.property(share(1, 2000), share(0.1, 10), (load, factor) => {
      const setup = { length: L, rear: 0, front: L, at: 0.64 };
      const one = benchPress(profile, { ...setup, load });
      const other = benchPress(profile, { ...setup, load: load * factor });
      for (const i of [10, 50, 90])
        expect(other.deflection[i] / (factor * one.deflection[i])).toBeCloseTo(1, 9);
      expect(other.spring).toBe(one.spring);
    }),
    { numRuns: 20 },
  );
});

test('reciprocity: what a load at c does at d, a load at d does at c', () => {
  fc.assert(
    fc.property(share(0.1, 1.2), share(0.1, 1.2), (c, d) => {
      const x = meshThrough(0, L, [c, d]);
      const answer = (at: number, seen: number) => {
        const load = new Float64Array(2 * x.length);
        load[2 * nodeAt(x, at)] = 1;
        const u = solveSupported(bendingMatrix(x, gaussValues(profile, x)), load, [
          [0, 0],
          [2 * x.length - 2, 0],
        ]);
        return u[2 * nodeAt(x, seen)];
      };
      expect(answer(c, d) / answer(d, c)).toBeCloseTo(1, 7);
    }),
    { numRuns: 20 },
  );
});

test('a stiffer ski anywhere deflects less', () => {
  fc.assert(
    fc.property(share(0, L), share(1, 300), (where, extra) => {
      const setup = { length: L, rear: 0, front: L, at: 0.64, load: 100 };
      const stiffened = (x: number) => profile(x) + extra * Math.exp(-(((x - where) / 0.15) ** 2));
      expect(benchPress(stiffened, setup).loadDeflection).toBeLessThan(
        benchPress(profile, setup).loadDeflection,
      );
    }),
    { numRuns: 20 },
  );
});

test('supports and load out of order are refused by name', () => {
  const press = (rear: number, front: number, at: number) => () =>
    benchPress(profile, { length: L, rear, front, at, load: 1 });
  expect(press(-0.1, 1, 0.5)).toThrow(expect.objectContaining({ field: 'rearSupport' }));
  expect(press(0, 1.5, 0.5)).toThrow(expect.objectContaining({ field: 'frontSupport' }));
  expect(press(0, 1, 1.2)).toThrow(expect.objectContaining({ field: 'at' }));
});

test('springs of a uniform ski are the handbook ones and swap when it is turned round', () => {
  const ski = { length: 1.4, bootCentre: 0.6, soleLength: 0.3 };
  const found = springs(() => 400, ski);
  expect(found.rear).toBeCloseTo((3 * 400) / 0.45 ** 3, 6);
  expect(found.shovel).toBeCloseTo((3 * 400) / 0.65 ** 3, 6);
  expect(found.centre).toBeCloseTo((3 * 400 * 1.4) / (0.6 * 0.8) ** 2, 6);
  expect(found.balance).toBeCloseTo((0.45 / 0.65) ** 3, 9);
  const turned = springs(() => 400, { ...ski, bootCentre: 0.8 });
  expect(turned.rear).toBeCloseTo(found.shovel, 8);
  expect(() => springs(() => 400, { ...ski, bootCentre: 0.1 })).toThrow(
    expect.objectContaining({ field: 'bootCentre' }),
  );
});

test('twist springs follow GJφ′ = M', () => {
  expect(torsionalSpring(() => 120, 0.85, 1.4)).toBeCloseTo(120 / 0.55, 9);
  const linear = (x: number) => 40 + 100 * x;
  expect(torsionalSpring(linear, 0.2, 1)).toBeCloseTo(100 / Math.log(140 / 60), 7);
  expect(twistBench(() => 90, { length: 1.4, bootCentre: 0.6, soleLength: 0.3 }).rear).toBeCloseTo(
    90 / 0.45,
    9,
  );
});
