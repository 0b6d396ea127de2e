import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Tape } from '../../../core/numeric/index.ts';
import { GRAVITY, legRates, massOverSkis } from '../../../core/skier/index.ts';

/** heading, speed, lean, lean rate, leg, leg speed, push, curvature, scrape, slope, friction, drag. */
const tape = new Tape();
const [
  heading,
  speed,
  lean,
  leanRate,
  leg,
  legSpeed,
  push,
  curvature,
  scrape,
  downhill,
  intoSnow,
  friction,
  drag,
] = Array.from({ length: 13 }, () => tape.input());
const metres = tape.divide(speed, massOverSkis(tape, leg, lean, curvature));
const rates = legRates(
  tape,
  {
    heading,
    speed,
    lean,
    leanRate,
    leg,
    legSpeed,
    push,
    curvature,
    scrape,
    downhill,
    intoSnow,
    friction,
    drag,
  },
  { seconds: tape.constant(1), metres },
);
const formula = tape.compile([
  rates.heading,
  rates.speed,
  rates.lean,
  rates.leanRate,
  rates.leg,
  rates.legSpeed,
  metres,
]);

function ratesAt(inputs: readonly number[]): Float64Array {
  const out = new Float64Array(formula.outputCount);
  formula.values(Float64Array.from(inputs), new Float64Array(0), 0, out);
  return out;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('energy: the legs put in, friction, scraping and air take out, nothing else', () => {
  const state = fc.tuple(
    between(-1.2, 1.2),
    between(3, 30),
    between(-1, 1),
    between(-3, 3),
    between(0.6, 1),
    between(-1, 1),
    between(0.1, 4),
    between(-0.12, 0.12),
    between(0, 0.2),
    between(0, 0.6),
    between(0, 0.1),
    between(0, 0.005),
  );
  fc.assert(
    fc.property(state, ([chi, u, psi, omega, l, lDot, f, kappa, s, alpha, mu, c]) => {
      const inputs = [
        chi,
        u,
        psi,
        omega,
        l,
        lDot,
        f,
        kappa,
        s,
        GRAVITY * Math.sin(alpha),
        GRAVITY * Math.cos(alpha),
        mu,
        c,
      ];
      const [, uDot, , omegaDot, , lDotDot] = ratesAt(inputs);
      const [sin, cos] = [Math.sin(psi), Math.cos(psi)];
      const out = l * cos * omega + lDot * sin;
      const up = lDot * cos - l * sin * omega;
      const outRate = l * cos * omegaDot + 2 * lDot * cos * omega - l * sin * omega ** 2 + lDotDot * sin;
      const upRate = lDotDot * cos - 2 * lDot * sin * omega - l * cos * omega ** 2 - l * sin * omegaDot;
      const climb = Math.cos(alpha) * up - Math.sin(alpha) * (u * Math.cos(chi) - out * Math.sin(chi));
      const gained = u * uDot + out * outRate + up * upRate + GRAVITY * climb;
      const force = f * GRAVITY;
      const put = force * lDot - (mu + s) * force * u - c * u ** 3;
      expect(gained).toBeCloseTo(put, 6);
    }),
    { numRuns: 300 },
  );
});

test('a steady circle leans as its own mass, inside the skis, asks', () => {
  // tanψ = (v²κ(1 − κℓ sinψ) + g sinα sinχ)/(g cosα) [derived, skier.md section 1].
  const [v, kappa, l, alpha, chi] = [14, 1 / 12, 0.9, 0.2, 0.4];
  let psi = 0.5;
  for (let i = 0; i < 200; i++) {
    psi = Math.atan(
      (v * v * kappa * (1 - kappa * l * Math.sin(psi)) + GRAVITY * Math.sin(alpha) * Math.sin(chi)) /
        (GRAVITY * Math.cos(alpha)),
    );
  }
  const u = v * (1 - kappa * l * Math.sin(psi));
  const sideways =
    v * v * kappa * (1 - kappa * l * Math.sin(psi)) + GRAVITY * Math.sin(alpha) * Math.sin(chi);
  const push = (sideways * Math.sin(psi) + GRAVITY * Math.cos(alpha) * Math.cos(psi)) / GRAVITY;
  const found = ratesAt([
    chi,
    u,
    psi,
    0,
    l,
    0,
    push,
    kappa,
    0,
    GRAVITY * Math.sin(alpha),
    GRAVITY * Math.cos(alpha),
    0,
    0,
  ]);
  expect(found[3]).toBeCloseTo(0, 10);
  expect(found[5]).toBeCloseTo(0, 10);
  expect(found[6]).toBeCloseTo(v, 10);
  expect(found[0]).toBeCloseTo(v * kappa, 10);
});

test('a leg standing on a straight path falls over as a pendulum on end does', () => {
  const [l, psi, alpha] = [0.9, 0.1, 0.3];
  const found = ratesAt([
    0,
    10,
    psi,
    0,
    l,
    0,
    1,
    0,
    0,
    GRAVITY * Math.sin(alpha),
    GRAVITY * Math.cos(alpha),
    0,
    0,
  ]);
  expect(found[3]).toBeCloseTo((GRAVITY * Math.cos(alpha) * Math.sin(psi)) / l, 10);
});
