import { expect, test } from 'vitest';
import { type BenchReading, benchPress, bendingOf, identify, nodeAt } from '../../../core/flex/index.ts';
import { sayAll } from '../../../core/language/index.ts';
import { told } from '../fault/told.ts';
import { invented } from './ski.ts';

const L = 1.36;
const truth = bendingOf(invented())!;

function measure(
  places: readonly (readonly [number, number])[],
  error: (i: number) => number,
): BenchReading[] {
  return places.map(([loadAt, dialAt], i) => {
    const load = 150;
    const bench = benchPress(truth, { length: L, rear: 0, front: L, at: loadAt, load, elements: 680 });
    return {
      loadAt,
      load,
      dialAt,
      deflection: bench.deflection[nodeAt(bench.x, dialAt)] + error(i),
      rear: 0,
      front: L,
    };
  });
}

const spreadOut = [0.2, 0.34, 0.5, 0.68, 0.86, 1.02, 1.16].flatMap(at => [
  [at, at] as const,
  [at, 0.68] as const,
]);

test('many readings give the profile back within its band', () => {
  const wobble = (i: number) => 3e-5 * Math.sin(7.3 * i + 1);
  const found = identify(measure(spreadOut, wobble), { length: L });
  expect(found.enough).toBe(true);
  expect(found.residual).toBeLessThan(6e-5);
  for (const station of found.stations) {
    const value = truth(station.x);
    expect(station.low).toBeLessThan(station.newtonM2);
    expect(station.high).toBeGreaterThan(station.newtonM2);
    if (station.x > 0.25 * L && station.x < 0.75 * L) {
      expect(Math.abs(station.newtonM2 / value - 1)).toBeLessThan(0.1);
      expect(station.low * 0.97).toBeLessThan(value);
      expect(station.high * 1.03).toBeGreaterThan(value);
    }
  }
});

test('the profile predicts a reading it was not shown', () => {
  const found = identify(
    measure(spreadOut, () => 0),
    { length: L },
  );
  const setup = { length: L, rear: 0.1, front: 1.3, at: 0.6, load: 200 };
  const predicted = benchPress(found.profile, setup).loadDeflection;
  expect(predicted / benchPress(truth, setup).loadDeflection).toBeCloseTo(1, 2);
});

test('two readings at the middle give a mean stiffness and an open statement that they are not enough', () => {
  const found = identify(
    measure(
      [
        [0.68, 0.68],
        [0.68, 0.66],
      ],
      () => 0,
    ),
    { length: L },
  );
  expect(found.enough).toBe(false);
  expect(found.resolved).toBeLessThan(2.5);
  expect(sayAll(found.notes)).toMatch(/the mean stiffness is found, its shape is not/);
});

test('rougher dials widen the band', () => {
  const rows = measure(spreadOut, () => 0);
  const width = (uncertainty: number) => {
    const middle = identify(rows, { length: L, uncertainty }).stations[4];
    return middle.high / middle.low;
  };
  expect(width(2e-4)).toBeGreaterThan(width(5e-5));
});

test('readings that contradict each other are called out', () => {
  const rows = measure(spreadOut, i => (i % 2 ? 2e-3 : -2e-3));
  const found = identify(rows, { length: L });
  expect(found.enough).toBe(false);
  expect(sayAll(found.notes)).toMatch(/disagree by \d+\.\d times their stated uncertainty/);
});

test('a reading that cannot be is refused with its row and field', () => {
  const [row, other] = measure(
    [
      [0.68, 0.68],
      [0.5, 0.6],
    ],
    () => 0,
  );
  expect(told(() => identify([row, { ...other, load: -5 }], { length: L }))[0]).toMatch(
    /^row 2, load: −5\sN/,
  );
  expect(() => identify([row, { ...other, dialAt: 2 }], { length: L })).toThrow(
    expect.objectContaining({ field: 'dialAt', where: { row: 2 } }),
  );
  expect(() => identify([row, { ...other, deflection: 0 }], { length: L })).toThrow(
    expect.objectContaining({ field: 'deflection' }),
  );
  expect(() => identify([row], { length: L })).toThrow(expect.objectContaining({ field: 'readings' }));
});
