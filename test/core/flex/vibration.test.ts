import { expect, test } from 'vitest';
import { symmetricEigen } from '../../../core/flex/eigen.ts';
import { dampingRatio, massMatrix, meshThrough, vibrate, vibrationTest } from '../../../core/flex/index.ts';
import { multiplySymmetric } from '../../../core/numeric/index.ts';
import { invented } from './ski.ts';

const uniform = {
  length: 1.4,
  bootCentre: 0.66,
  soleLength: 0.3,
  bending: () => 500,
  torsion: () => 150,
  massPerLength: () => 1.2,
  width: () => 0.07,
};

test('torsion of a uniform free strip: f = n/(2L) √(GJ/J)', () => {
  const speed = Math.sqrt(150 / ((1.2 * 0.07 ** 2) / 12));
  const twists = vibrate(uniform, { modes: 6 }).filter(mode => mode.kind.startsWith('torsion'));
  expect(twists[0].kind).toBe('torsion 1');
  expect((twists[0].hz * 2 * 1.4) / speed).toBeCloseTo(1, 3);
  expect((twists[1].hz * 2 * 1.4) / speed).toBeCloseTo(2, 2);
});

test('clamped parts: the shorter one swings faster', () => {
  const modes = vibrate(uniform, { clamped: true, modes: 4 });
  const first = (part: string) => modes.find(mode => mode.kind === `${part} bending 1`)!;
  expect(first('afterbody').hz / first('forebody').hz).toBeCloseTo((0.59 / 0.51) ** 2, 5);
  const { shape } = first('forebody');
  expect(shape[0]).toBeCloseTo(0, 6);
  expect(shape[shape.length - 1]).toBeCloseTo(1, 9);
});

test('frequencies go with the root of stiffness over mass', () => {
  const base = vibrate(uniform, { modes: 3 });
  const stiffer = vibrate({ ...uniform, bending: () => 2000, torsion: () => 600 }, { modes: 3 });
  base.forEach((mode, i) => {
    expect(stiffer[i].hz / mode.hz).toBeCloseTo(2, 7);
  });
});

test('the mass matrix weighs the whole beam', () => {
  const x = meshThrough(0, 1.4, [0.5]);
  const mass = massMatrix(x, at => 1 + at);
  const rise = Float64Array.from({ length: mass.size }, (_, i) => (i % 2 ? 0 : 1));
  const force = multiplySymmetric(mass, rise, new Float64Array(mass.size));
  expect(force.reduce((sum, f, i) => sum + f * rise[i], 0)).toBeCloseTo(1.4 + 1.4 ** 2 / 2, 10);
});

test('a small symmetric eigenproblem is solved', () => {
  const { values, vectors } = symmetricEigen([
    Float64Array.of(2, -1, 0),
    Float64Array.of(-1, 2, -1),
    Float64Array.of(0, -1, 2),
  ]);
  [2 - Math.SQRT2, 2, 2 + Math.SQRT2].forEach((value, i) => {
    expect(values[i]).toBeCloseTo(value, 12);
  });
  expect(Math.abs(vectors[0][1] / vectors[0][0])).toBeCloseTo(Math.SQRT2, 10);
});

test('a ski answers with its lowest modes or says what it needs', () => {
  const answer = vibrationTest(invented(), { modes: 3 });
  expect(answer.ok && answer.modes.map(mode => mode.kind)).toContain('bending 1');
  const hz = answer.ok ? answer.modes.map(mode => mode.hz) : [];
  expect(hz).toEqual([...hz].sort((a, b) => a - b));
  expect(hz[0]).toBeGreaterThan(5);
  expect(hz[0]).toBeLessThan(60);
  expect(vibrationTest(invented({ bending: null }))).toEqual({
    ok: false,
    needs: 'a stiffness profile (bending)',
  });
  expect(vibrationTest(invented({ mass: null }))).toMatchObject({
    ok: false,
    needs: expect.stringMatching(/massKg/),
  });
  expect(() => vibrationTest(invented(), { modes: 0 })).toThrow(/modes: 0 found/);
});

// Derived: ζ = ln 2/(2π f t½).
test('damping from the half-value time', () => {
  expect(dampingRatio(15, 0.2)).toBeCloseTo(Math.LN2 / (6 * Math.PI), 12);
  expect(() => dampingRatio(15, 0)).toThrow(/halfValueTime: 0 s/);
});
