import { expect, test } from 'vitest';
import {
  benchPress,
  bendingMatrix,
  cantileverCompliance,
  flatTable,
  gaussValues,
  largeBend,
  largeCantilever,
  massMatrix,
  meshThrough,
  nodeAt,
  type Profile,
  vibrate,
} from '../../core/flex/index.ts';
import { say } from '../../core/language/index.ts';
import { factorSymmetric, solveSymmetric } from '../../core/numeric/index.ts';

const L = 1.4;
/** EI falling evenly from `middle` at the centre to `end` at both contact points. */
const tapered =
  (end: number, middle: number): Profile =>
  x =>
    end + (middle - end) * (1 - Math.abs((2 * x) / L - 1));

// Source: any handbook (Roark's Formulas for Stress and Strain), PL³/48EI. Value derived.
test('uniform ski on two supports: 28.583 mm under 300 N', () => {
  const bench = benchPress(() => 600, { length: L, rear: 0, front: L, at: L / 2, load: 300 });
  expect(bench.loadDeflection * 1e3).toBeCloseTo(28.583, 3);
  expect((bench.spring * L ** 3) / (48 * 600)).toBeCloseTo(1, 8);
});

// Source: handbook integral δ = (P/2)[ℓ²/2b − aℓ/b² + (a²/b³) ln((a + bℓ)/a)], ℓ = L/2. Value derived.
test('ski tapering from 600 to 100 N·m²: 38.245 mm under 300 N', () => {
  const bench = benchPress(tapered(100, 600), { length: L, rear: 0, front: L, at: L / 2, load: 300 });
  const half = L / 2;
  const b = 500 / half;
  const closed =
    150 *
    (half ** 2 / (2 * b) - (100 * half) / b ** 2 + (100 ** 2 / b ** 3) * Math.log((100 + b * half) / 100));
  expect(bench.loadDeflection * 1e3).toBeCloseTo(38.245, 3);
  expect(bench.loadDeflection / closed).toBeCloseTo(1, 6);
});

// Source: the same handbook integral. Value derived.
test('cantilever 0.6 m, 50 N·m² at the tip to 400 at the root: 12.330 mm under 50 N', () => {
  const profile: Profile = x => 400 - (350 * x) / 0.6;
  expect(50 * cantileverCompliance(profile, 0, 0.6) * 1e3).toBeCloseTo(12.33, 3);
  // The same by the beam elements, clamped at the root.
  const x = meshThrough(0, 0.6);
  const load = new Float64Array(2 * x.length);
  load[2 * x.length - 2] = 50;
  const band = bendingMatrix(x, gaussValues(profile, x));
  for (const index of [0, 1]) band.data[index * (band.half + 1) + band.half] += 1e12;
  expect(factorSymmetric(band)).toBe(0);
  expect(solveSymmetric(band, load)[2 * x.length - 2] * 1e3).toBeCloseTo(12.33, 3);
});

// Source: 48EIh/L³ for a uniform ski, 62.753 N for the taper from 100 to 600 N·m². Values derived.
test('first touch of an 8 mm camber: 83.965 N uniform, 62.753 N tapered', () => {
  const uniform = flatTable(() => 600, { length: L, camber: 0.008, at: L / 2 });
  expect(uniform.firstTouch).toBeCloseTo(83.965, 3);
  expect(uniform.firstTouchAt).toBeCloseTo(L / 2, 12);
  expect(flatTable(tapered(100, 600), { length: L, camber: 0.008, at: L / 2 }).firstTouch).toBeCloseTo(
    62.753,
    2,
  );
});

// Source: the gap left is s(1 − 2s)²h, at most 0.0741 h (2/27, at s = 1/6). Derived.
test('a uniform ski keeps a gap of s(1 − 2s)² h after its middle has touched, however hard it is pressed', () => {
  const h = 0.008;
  const table = flatTable(() => 600, { length: L, camber: h, at: L / 2 });
  for (const load of [84, 400, 5000]) {
    const { gap } = table.press(load);
    table.x.forEach((x, i) => {
      const s = Math.min(x, L - x) / L;
      expect(gap[i]).toBeCloseTo(s * (1 - 2 * s) ** 2 * h, 9);
    });
  }
  expect(table.gapLeft / h).toBeLessThanOrEqual(0.0741);
  expect(table.gapLeft / h).toBeCloseTo(2 / 27, 4);
  expect(Math.min(table.gapLeftAt, L - table.gapLeftAt) / L).toBeCloseTo(1 / 6, 2);
  expect(table.flatten).toBeNull();
});

// Source: Hetényi, Beams on Elastic Foundation (1946), from memory, checked by finite elements:
// y₀ = (Pλ/2k)(cosh λL + cos λL + 2)/(sinh λL + sin λL), free-free, central load.
test('free beam on an elastic foundation: y₀ 6.7407 mm, ends −1.7170 mm, M₀ 65.184 N·m', () => {
  const [EI, k, P] = [500, 2e5, 800];
  const x = meshThrough(0, L, [L / 2]);
  const band = bendingMatrix(
    x,
    gaussValues(() => EI, x),
  );
  // A Winkler foundation has the consistent matrix of a mass of k a length.
  const ground = massMatrix(x, () => k);
  for (let i = 0; i < band.data.length; i++) band.data[i] += ground.data[i];
  const u = new Float64Array(2 * x.length);
  const middle = nodeAt(x, L / 2);
  u[2 * middle] = P;
  factorSymmetric(band);
  solveSymmetric(band, u);
  const lambda = (k / (4 * EI)) ** 0.25;
  const a = lambda * L;
  expect(a).toBeCloseTo(4.42719, 5);
  const y0 = ((P * lambda) / (2 * k)) * ((Math.cosh(a) + Math.cos(a) + 2) / (Math.sinh(a) + Math.sin(a)));
  expect(u[2 * middle]).toBeCloseTo(y0, 8);
  expect(u[2 * middle] * 1e3).toBeCloseTo(6.7407, 4);
  expect(u[0] * 1e3).toBeCloseTo(-1.717, 3);
  // M = −EI w'' in the element beside the load, from its end values.
  const h = x[middle + 1] - x[middle];
  const [w0, t0, w1, t1] = u.slice(2 * middle, 2 * middle + 4);
  const curvature = (6 * (w1 - w0)) / h ** 2 - (4 * t0 + 2 * t1) / h;
  expect(-EI * curvature).toBeCloseTo(65.184, 1);
});

// Source: Bisshopp & Drucker, Q. Appl. Math. 3 (1945) 272, from memory, recomputed.
test.each([
  [0.5, 0.16214],
  [1, 0.30172],
  [2, 0.49346],
  [5, 0.71379],
  [10, 0.81061],
])('elastica cantilever, PL²/EI = %d: w/L = %d', (load, published) => {
  const bent = largeCantilever(() => 1, 0, 1, load, 400);
  expect(Math.abs(bent.deflection - published)).toBeLessThan(1e-5);
  expect(bent.beyondSmall).toBe(true);
  // The same from the other end.
  expect(largeCantilever(() => 1, 1, 0, load, 400).deflection).toBeCloseTo(bent.deflection, 12);
});

// Source: by symmetry, half of a ski pressed midway is a cantilever of half the length under half the load. Derived.
test('large bend on the bench agrees with the elastica of its half, and says when small theory is off', () => {
  const setup = { length: L, rear: 0, front: L, at: L / 2, elements: 400 };
  const small = largeBend(() => 500, { ...setup, load: 300 });
  const large = largeBend(() => 500, { ...setup, load: 2000 });
  expect(large.deflection).toBeCloseTo(largeCantilever(() => 500, L / 2, L, 1000, 200).deflection, 8);
  expect(small.beyondSmall).toBe(false);
  expect(say(small.statement)).toMatch(/within 2\s%/);
  expect(large.beyondSmall).toBe(true);
  expect(say(large.statement)).toMatch(/10\.1\s% too large/);
});

// Source: Blevins, Formulas for Natural Frequency and Mode Shape, seen in part.
test('frequency roots: free-free 4.73004, 7.85320, 10.99561; cantilever 1.87510, 4.69409, 7.85476', () => {
  const [EI, mu] = [500, 1.2];
  const root = (hz: number, length: number) => length * Math.sqrt(2 * Math.PI * hz * Math.sqrt(mu / EI));
  const ski = {
    length: L,
    bootCentre: 0.7,
    soleLength: 0.3,
    bending: () => EI,
    torsion: null,
    massPerLength: () => mu,
    width: () => 0.07,
  };
  const free = vibrate(ski, { modes: 3 });
  expect(free.map(mode => mode.kind)).toEqual(['bending 1', 'bending 2', 'bending 3']);
  [4.73004, 7.8532, 10.99561].forEach((published, i) => {
    expect(root(free[i].hz, L)).toBeCloseTo(published, 4);
  });
  const clamped = vibrate(ski, { clamped: true, modes: 6 }).filter(mode => mode.kind.startsWith('forebody'));
  [1.8751, 4.69409, 7.85476].forEach((published, i) => {
    expect(root(clamped[i].hz, 0.55)).toBeCloseTo(published, 4);
  });
});
