import { describe, expect, it, test } from 'vitest';
import {
  dampingRatio,
  endPieces,
  localWidth,
  massMatrix,
  massPerLength,
  meshThrough,
  modeName,
  type VibratingSki,
  vibrate,
  vibrationTest,
} from '../../../core/flex/index.ts';
import { say } from '../../../core/language/index.ts';
import { multiplySymmetric, quadrature } from '../../../core/numeric/index.ts';
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

test('a mode is called by its part, its motion and its order, as its document has it', () => {
  for (const mode of [...vibrate(uniform), ...vibrate(uniform, { clamped: true, modes: 12 })]) {
    expect(say(modeName(mode))).toBe(mode.kind);
  }
  const clamped = vibrate(uniform, { clamped: true, modes: 12 }).map(({ kind }) => kind);
  for (const kind of ['afterbody torsion 1', 'forebody torsion 1', 'forebody bending 2']) {
    expect(clamped).toContain(kind);
  }
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

test('a ski answers with its lowest modes or says what it needs', () => {
  const answer = vibrationTest(invented(), { modes: 3 });
  expect(answer.ok && answer.modes.map(mode => mode.kind)).toContain('bending 1');
  const hz = answer.ok ? answer.modes.map(mode => mode.hz) : [];
  expect(hz).toEqual([...hz].sort((a, b) => a - b));
  expect(hz[0]).toBeGreaterThan(5);
  expect(hz[0]).toBeLessThan(60);
  expect(vibrationTest(invented({ bending: null }))).toEqual({
    ok: false,
    needs: { key: 'flex.needsBending' },
  });
  expect(vibrationTest(invented({ mass: null }))).toMatchObject({
    ok: false,
    needs: { key: 'flex.needsMass' },
  });
  expect(() => vibrationTest(invented(), { modes: 0 })).toThrow(expect.objectContaining({ field: 'modes' }));
});

// Derived: ζ = ln 2/(2π f t½).
test('damping from the half-value time', () => {
  expect(dampingRatio(15, 0.2)).toBeCloseTo(Math.LN2 / (6 * Math.PI), 12);
  expect(() => dampingRatio(15, 0)).toThrow(expect.objectContaining({ field: 'halfValueTime' }));
});

describe('the ends beyond the contact points', () => {
  const ei = 400;
  const mu = 1.2;
  const bare = { ...uniform, bending: () => ei, torsion: null, massPerLength: () => mu };

  it('lower the frequencies as a beam with very stiff ends of the same mass does', () => {
    const rear = 0.06;
    const front = 0.14;
    const whole = bare.length + rear + front;
    const piece = (length: number) => ({ length, mass: mu * length, width: 0.1 });
    const carried = vibrate(
      { ...bare, ends: { rear: piece(rear), front: piece(front) } },
      { modes: 3, elements: 160 },
    );
    const stiffEnds = vibrate(
      {
        ...bare,
        length: whole,
        bending: x => (x < rear || x > rear + bare.length ? 1e5 * ei : ei),
      },
      { modes: 3, elements: 400 },
    );
    carried.forEach((mode, at) => {
      expect(mode.hz / stiffEnds[at]!.hz).toBeCloseTo(1, 2);
      expect(mode.hz).toBeLessThan(vibrate(bare, { modes: 3 })[at]!.hz);
    });
  });

  // Derived: cantilever with a point mass M = r μ ℓ at its end, 1 + cosβ coshβ + rβ(cosβ sinhβ − sinβ coshβ) = 0.
  it('a point at the end of a clamped forebody swings at the root of its own equation', () => {
    const ratio = 0.5;
    const front = bare.length - (bare.bootCentre + bare.soleLength / 2);
    const none = { length: 0, mass: 0, width: 0 };
    const ends = { rear: none, front: { length: 0, mass: ratio * mu * front, width: 0 } };
    const found = vibrate({ ...bare, ends }, { clamped: true, modes: 6 }).find(
      mode => mode.kind === 'forebody bending 1',
    )!;
    const equation = (b: number) =>
      1 + Math.cos(b) * Math.cosh(b) + ratio * b * (Math.cos(b) * Math.sinh(b) - Math.sin(b) * Math.cosh(b));
    let low = 0.5;
    let high = 1.87;
    expect(equation(low) * equation(high)).toBeLessThan(0);
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (equation(middle) * equation(low) > 0) low = middle;
      else high = middle;
    }
    expect(found.hz).toBeCloseTo((low ** 2 / (2 * Math.PI * front ** 2)) * Math.sqrt(ei / mu), 3);
  });

  it('weigh what is left of the mass the file states', () => {
    const ski = invented({ mass: 2 });
    const mass = massPerLength(ski)!;
    const width = localWidth(ski);
    const { rear, front } = endPieces(ski, mass, width);
    const between = quadrature(mass, 0, ski.contactLength, 60);
    expect(rear.mass + front.mass + between).toBeCloseTo(2, 9);
    expect(rear.length + front.length).toBeCloseTo(ski.length - ski.contactLength, 12);
  });

  it('twist slower with them', () => {
    const twisting = { ...uniform, massPerLength: () => mu };
    const ends = {
      rear: { length: 0.05, mass: 0.06, width: 0.1 },
      front: { length: 0.1, mass: 0.12, width: 0.11 },
    };
    const first = (ski: VibratingSki) =>
      vibrate(ski, { modes: 6 }).find(({ kind }) => kind === 'torsion 1')!.hz;
    expect(first({ ...twisting, ends })).toBeLessThan(first(twisting));
  });
});
