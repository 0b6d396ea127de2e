import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cosineTurnSurface } from '../../../core/carve/index.ts';
import { Tape } from '../../../core/numeric/index.ts';
import { BITE, canBreak, wallRoom, wallUsed } from '../../../core/skier/index.ts';

const DEGREE = Math.PI / 180;
const press = { contactLength: 1.4, hardness: 1e10 };
const ski = cosineTurnSurface(12.5, press);
const loadPerPush = 0.7 * 80 * 9.81;
const strength = 900e3;

const tape = new Tape();
const [edge, lean, push] = [tape.input(), tape.input(), tape.input()];
const room = tape.compile([
  wallRoom(tape, ski, loadPerPush, tape.constant(strength / loadPerPush), edge, lean, push),
]);
const roomAt = (...at: number[]) => {
  const out = new Float64Array(1);
  room.values(Float64Array.from(at), new Float64Array(0), 0, out);
  return out[0]!;
};

const places = fc.record({
  edge: fc.double({ min: -80, max: 80, noNaN: true }),
  lean: fc.double({ min: -70, max: 70, noNaN: true }),
  push: fc.double({ min: 0.2, max: 5, noNaN: true }),
});

describe('the wall of the groove', () => {
  it('has the derivatives of its values', () => {
    fc.assert(
      fc.property(places, ({ edge, lean, push }) => {
        const at = Float64Array.of(edge * DEGREE, lean * DEGREE, push);
        const jacobian = new Float64Array(3);
        const hessian = new Float64Array(9);
        const row = (values: Float64Array) => ({ values, at: 0, width: values.length });
        const derivatives = (point: Float64Array) =>
          room.derivativesOf(0, 1).run(1, row(point), row(new Float64Array(0)), row(Float64Array.of(1)), {
            jacobian: row(jacobian),
            hessian: row(hessian),
          });
        derivatives(at);
        const slopes = jacobian.slice();
        const bends = hessian.slice();
        const h = 1e-5;
        for (let i = 0; i < 3; i++) {
          const to = (by: number) => at.map((v, k) => (k === i ? v + by : v));
          const slope = (roomAt(...to(h)) - roomAt(...to(-h))) / (2 * h);
          expect(Math.abs(slopes[i]! - slope)).toBeLessThan(1e-5 * (1 + Math.abs(slope)));
          derivatives(to(h));
          const up = jacobian.slice();
          derivatives(to(-h));
          for (let k = 0; k < 3; k++) {
            const bend = (up[k]! - jacobian[k]!) / (2 * h);
            expect(Math.abs(bends[3 * i + k]! - bend)).toBeLessThan(1e-3 * (1 + Math.abs(bend)));
          }
        }
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('has room left just as long as less than the whole of it is used', () => {
    fc.assert(
      fc.property(places, ({ edge, lean, push }) => {
        const [theta, psi] = [edge * DEGREE, lean * DEGREE];
        const used = wallUsed(ski, theta, psi, push * loadPerPush, strength);
        if (Math.abs(used - 1) > 1e-9) expect(roomAt(theta, psi, push) > 0).toBe(used < 1);
        expect(wallUsed(ski, -theta, -psi, push * loadPerPush, strength)).toBeCloseTo(used, 12);
      }),
      { seed: 8 },
    );
  });

  it('breaks where a wedge pressed evenly into flat snow says: F sinψ = S L e, e² = 2 (F/L) tanθ/H [derived]', () => {
    // The greatest load at an edge angle and a lean, from the two together: F = 2 L S² tanθ/(H sin²ψ).
    for (const [theta, psi] of [
      [60, 50],
      [65, 65],
      [45, 30],
      [30, 31],
    ].map(pair => pair.map(each => each * DEGREE))) {
      const most =
        (2 * press.contactLength * strength ** 2 * Math.tan(theta!)) / (press.hardness * Math.sin(psi!) ** 2);
      // The closed form knows neither the bite of a flat ski nor its rounding, both under 0.2 % here.
      expect(wallUsed(ski, theta!, psi!, most, strength)).toBeCloseTo(1, 2);
      const bite = Math.tanh(theta! / BITE);
      expect(wallUsed(ski, theta!, psi!, most, strength) / bite).toBeLessThanOrEqual(1);
    }
  });

  it('of a ski tilted as the force leans bears the less the harder the snow, and more with more edge', () => {
    const used = (hardness: number, edge: number, lean: number) =>
      wallUsed(
        cosineTurnSurface(12.5, { contactLength: 1.4, hardness }),
        edge * DEGREE,
        lean * DEGREE,
        1500,
        strength,
      );
    expect(used(3e10, 60, 60)).toBeGreaterThan(used(1e10, 60, 60));
    expect(used(1e10, 70, 60)).toBeLessThan(used(1e10, 60, 60));
    expect(used(1e10, 60, -20)).toBe(0);
  });

  it('is asked for only where it can break', () => {
    expect(canBreak(ski, strength)).toBe(true);
    expect(canBreak(ski, Number.POSITIVE_INFINITY)).toBe(false);
    expect(canBreak(cosineTurnSurface(12.5), strength)).toBe(false);
    expect(wallUsed(ski, 1, 1, 1500, Number.POSITIVE_INFINITY)).toBe(0);
  });
});
