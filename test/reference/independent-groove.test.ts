import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  type CarvingSki,
  type Equilibrium,
  grooveSolver,
  holdAlong,
  type SnowLaw,
  wedgeSnow,
} from '../../core/carve/index.ts';

// Numbers by numpy and scipy, from independent/groove_by_scipy.py: collocation of the boundary value problem on
// untouched snow, a Ritz method with Legendre polynomials for the groove with its memory, and finite differences
// refined until they no longer move for a ski that also twists in it [derived].
interface Station {
  x: number;
  penetrationMm: number;
  twistDeg: number;
}
interface Case {
  kind: 'virgin' | 'groove';
  edgeDeg: number;
  loadN: number;
  hardnessNPerMm3: number;
  twists: boolean;
  rearRadiusM?: number;
  wholeRadiusM?: number;
  stations: Station[];
}
interface TwistingMesh {
  intervals: number;
  rearRadiusM: number;
  wholeRadiusM: number;
  twistTipDeg: number;
  twistTailDeg: number;
  deepestMm: number;
  holdsFromM: number;
  holdsToM: number;
}
interface TwistingCase extends Omit<TwistingMesh, 'intervals'> {
  edgeDeg: number;
  loadN: number;
  hardnessNPerMm3: number;
  gj: [number, number];
  foreM: number;
  speedMPerS: number;
  baseBevelDeg: number;
  rearTold: number;
  frontRadiusM: number;
  frontTold: number;
  loadBehindSole: number;
  loadAheadOfSole: number;
  holdTipDeg: number;
  holdTailDeg: number;
  stations: (Station & { grooveMm: number })[];
  refinement: TwistingMesh[];
}
const file = new URL('./independent/groove-by-scipy.json', import.meta.url);
const {
  ski: numbers,
  cases,
  twisting,
} = JSON.parse(readFileSync(file, 'utf8')) as {
  ski: Record<string, number> & { ei: [number, number]; gj: [number, number] };
  cases: Case[];
  twisting: TwistingCase[];
};

const { length, radius, waist, taper } = numbers;
const hump = (ends: [number, number]) => (x: number) =>
  ends[1] + (ends[0] - ends[1]) * (1 - Math.abs((2 * x) / length - 1) ** 1.6);
const ski: CarvingSki = {
  edge: {
    length,
    halfWidth: x =>
      waist / 2 + (x - length / 2) ** 2 / (2 * radius) + ((taper / 2) * (x - length / 2)) / length,
    slope: x => (x - length / 2) / radius + taper / 2 / length,
    curvature: () => 1 / radius,
  },
  bending: hump(numbers.ei),
  torsion: hump(numbers.gj),
  camber: numbers.camber,
  bootCentre: numbers.boot,
  soleLength: numbers.sole,
};
const virginSnow: SnowLaw = { ...wedgeSnow, remembers: false };

function at(x: Float64Array, values: Float64Array, where: number): number {
  let i = 0;
  while (x[i + 1] < where) i++;
  return values[i] + ((values[i + 1] - values[i]) * (where - x[i])) / (x[i + 1] - x[i]);
}

describe('the groove against general-purpose solvers', () => {
  it('has both kinds bending alone, and untouched snow with twist', () => {
    expect(new Set(cases.map(entry => `${entry.kind} ${entry.twists}`)).size).toBe(3);
  });

  for (const entry of cases) {
    const title = `${entry.kind}, ${entry.edgeDeg}°, ${entry.loadN} N, ${entry.hardnessNPerMm3} N/mm³, ${entry.twists ? 'twisting' : 'rigid in torsion'}`;
    it(title, () => {
      const solver = grooveSolver(entry.twists ? ski : { ...ski, torsion: null }, {
        law: entry.kind === 'virgin' ? virginSnow : wedgeSnow,
      });
      const answer = solver.solve({
        edgeAngle: (entry.edgeDeg * Math.PI) / 180,
        load: entry.loadN,
        hardness: entry.hardnessNPerMm3 * 1e9,
        fore: 0,
      });
      if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
      const deepest = Math.max(...entry.stations.map(station => station.penetrationMm));
      for (const station of entry.stations) {
        const penetration = 1000 * at(answer.x, answer.penetration, station.x);
        expect(Math.abs(penetration - station.penetrationMm)).toBeLessThan(0.01 * deepest);
        const twist = (at(answer.x, answer.twist, station.x) * 180) / Math.PI;
        expect(Math.abs(twist - station.twistDeg)).toBeLessThan(0.01);
      }
      if (entry.rearRadiusM !== undefined && entry.wholeRadiusM !== undefined) {
        expect(Math.abs(answer.turnRadius / entry.wholeRadiusM - 1)).toBeLessThan(0.002);
        expect(Math.abs(answer.rear.radius / entry.rearRadiusM - 1)).toBeLessThan(0.002);
      }
    });
  }
});

/** Degrees of an angle in radians. */
const degrees = (angle: number) => (angle * 180) / Math.PI;

// What our mesh of 120 elements leaves, measured on these seven cases and rounded up. Both methods being of second
// order, 480 elements must leave a tenth of it (measured: a sixteenth) and the differences' last halving moves them by less.
const ALLOWED = {
  /** Share of the deepest penetration: 0.0050 measured. */
  depth: 0.006,
  /** Degrees: 0.0031 measured. */
  twist: 0.004,
  /** Relative, a part of the track: 6.2e-4 measured. */
  partRadius: 7e-4,
  /** Relative: 8.9e-5 measured. */
  turnRadius: 1e-4,
  /** Degrees: 0.0025 measured. */
  hold: 0.003,
  /** Where along the ski it lets go, m: 3.4e-4 measured. */
  place: 4e-4,
  /** Share of the load: 0.0015 measured. */
  load: 2e-3,
};
const FINER = 1 / 10;
/** An even load over this share of the length tells a curvature: our track is then the plain fit. */
const TOLD = 0.35;

function twistingSki(entry: TwistingCase): CarvingSki {
  return { ...ski, torsion: hump(entry.gj) };
}

function solveTwisting(
  entry: TwistingCase,
  elements: number,
  { as = twistingSki(entry), law = wedgeSnow } = {},
): Equilibrium {
  const answer = grooveSolver(as, { elements, law }).solve({
    edgeAngle: (entry.edgeDeg * Math.PI) / 180,
    load: entry.loadN,
    hardness: entry.hardnessNPerMm3 * 1e9,
    fore: entry.foreM,
  });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
}

/** Where `along` first falls to zero from the boot towards `end`, m; the end itself when it never does. */
function lostAt(x: Float64Array, along: Float64Array, boot: number, end: -1 | 1): number {
  let i = x.findIndex(place => place >= boot);
  while (x[i + end] !== undefined && along[i + end] > 0) i += end;
  const next = i + end;
  if (x[next] === undefined) return x[i];
  return x[i] + ((x[next] - x[i]) * along[i]) / (along[i] - along[next]);
}

/** Share of the load behind a node at `border`, m. */
function loadBehind({ x, lineLoad, conditions }: Equilibrium, border: number): number {
  let force = 0;
  for (let i = 0; i + 1 < x.length && x[i] < border - 1e-9; i++) {
    force += 0.5 * (x[i + 1] - x[i]) * (lineLoad[i] + lineLoad[i + 1]);
  }
  return force / conditions.load;
}

interface Reading {
  name: string;
  found: number;
  expected: number;
  allowed: number;
}

/** Everything both tell of the ski, and how far apart they may be on our mesh of 120 elements. */
function readings(answer: Equilibrium, entry: TwistingCase): Reading[] {
  const { x, penetration, groove, twist } = answer;
  const depth = ALLOWED.depth * entry.deepestMm;
  const lean = Math.atan(entry.speedMPerS ** 2 / (9.81 * answer.turnRadius));
  const hold = holdAlong(answer, numbers.boot, lean, (entry.baseBevelDeg * Math.PI) / 180);
  const rear = numbers.boot - numbers.sole / 2;
  const front = numbers.boot + numbers.sole / 2;
  const radius = (name: string, found: number, expected: number, allowed: number): Reading => ({
    name,
    found: found / expected,
    expected: 1,
    allowed,
  });
  const list: Reading[] = [
    radius('turn radius', answer.turnRadius, entry.wholeRadiusM, ALLOWED.turnRadius),
    ...[
      radius('rear radius', answer.rear.radius, entry.rearRadiusM, ALLOWED.partRadius),
      radius('front radius', answer.front.radius, entry.frontRadiusM, ALLOWED.partRadius),
    ].filter((_, part) => [entry.rearTold, entry.frontTold][part] >= TOLD),
  ];
  const add = (name: string, found: number, expected: number, allowed: number) =>
    list.push({ name, found, expected, allowed });
  add('deepest, mm', 1000 * answer.maxPenetration, entry.deepestMm, depth);
  add('twist at the tip, degrees', degrees(answer.twistTip), entry.twistTipDeg, ALLOWED.twist);
  add('twist at the tail, degrees', degrees(answer.twistTail), entry.twistTailDeg, ALLOWED.twist);
  for (const station of entry.stations) {
    const where = `at ${station.x} m`;
    add(`penetration ${where}, mm`, 1000 * at(x, penetration, station.x), station.penetrationMm, depth);
    add(`groove ${where}, mm`, 1000 * at(x, groove, station.x), station.grooveMm, depth);
    add(`twist ${where}, degrees`, degrees(at(x, twist, station.x)), station.twistDeg, ALLOWED.twist);
  }
  add('hold at the tip, degrees', degrees(hold.tip), entry.holdTipDeg, ALLOWED.hold);
  add('hold at the tail, degrees', degrees(hold.tail), entry.holdTailDeg, ALLOWED.hold);
  add('holds from, m', lostAt(x, hold.along, numbers.boot, -1), entry.holdsFromM, ALLOWED.place);
  add('holds to, m', lostAt(x, hold.along, numbers.boot, 1), entry.holdsToM, ALLOWED.place);
  add('load behind the sole', loadBehind(answer, rear), entry.loadBehindSole, ALLOWED.load);
  add('load ahead of the sole', 1 - loadBehind(answer, front), entry.loadAheadOfSole, ALLOWED.load);
  return list;
}

/** The law that twists with the line load times the whole half width, as if all of it sat at the edge. */
const atTheEdge: SnowLaw = {
  remembers: true,
  evaluate(depth, halfWidth, edgeAngle, hardness, out) {
    wedgeSnow.evaluate(depth, halfWidth, edgeAngle, hardness, out);
    for (let i = 0; i < 3; i++) out[3 + i] = out[i] * halfWidth;
  },
};

describe('a ski that twists in the groove it remembers against finite differences', () => {
  it('has hard, groomed and soft snow, centred and shifted loads, and both ends letting go', () => {
    const hardnesses = twisting.map(entry => entry.hardnessNPerMm3);
    expect(Math.max(...hardnesses)).toBeGreaterThanOrEqual(10);
    expect(hardnesses).toContain(1);
    expect(Math.min(...hardnesses)).toBeLessThanOrEqual(0.1);
    expect(new Set(twisting.map(entry => Math.sign(entry.foreM)))).toEqual(new Set([-1, 0, 1]));
    for (const entry of twisting) {
      expect(entry.holdTipDeg).toBeLessThan(0);
      expect(entry.holdTailDeg).toBeLessThan(0);
    }
  });

  for (const entry of twisting) {
    const title = `${entry.edgeDeg}°, ${entry.loadN} N, ${entry.hardnessNPerMm3} N/mm³, load ${1000 * entry.foreM} mm ahead`;

    it(`${title}: the differences themselves no longer move`, () => {
      const [finer, before] = [...entry.refinement].reverse();
      expect(finer.intervals).toBe(2 * before.intervals);
      const moved = (key: keyof TwistingMesh) => Math.abs(finer[key] - before[key]);
      expect(moved('wholeRadiusM') / finer.wholeRadiusM).toBeLessThan(FINER * ALLOWED.turnRadius);
      expect(moved('rearRadiusM') / finer.rearRadiusM).toBeLessThan(FINER * ALLOWED.partRadius);
      expect(moved('twistTipDeg')).toBeLessThan(FINER * ALLOWED.twist);
      expect(moved('twistTailDeg')).toBeLessThan(FINER * ALLOWED.twist);
      expect(moved('deepestMm') / finer.deepestMm).toBeLessThan(FINER * ALLOWED.depth);
      expect(moved('holdsFromM')).toBeLessThan(FINER * ALLOWED.place);
      expect(moved('holdsToM')).toBeLessThan(FINER * ALLOWED.place);
    });

    it(`${title}: agrees on the usual mesh, ten times as well on one four times as fine`, () => {
      for (const { name, found, expected, allowed } of readings(solveTwisting(entry, 120), entry)) {
        expect(Math.abs(found - expected), name).toBeLessThan(allowed);
      }
      for (const { name, found, expected, allowed } of readings(solveTwisting(entry, 480), entry)) {
        expect(Math.abs(found - expected), `${name}, fine mesh`).toBeLessThan(FINER * allowed);
      }
    });

    it(`${title}: a part of the track too lightly loaded reads between its own fit and the whole ski's`, () => {
      const answer = solveTwisting(entry, 480);
      const parts: [told: number, own: number, found: number, tooShort: boolean][] = [
        [entry.rearTold, entry.rearRadiusM, answer.rear.radius, answer.rear.tooShort],
        [entry.frontTold, entry.frontRadiusM, answer.front.radius, answer.front.tooShort],
      ];
      for (const [reported, own, found, tooShort] of parts) {
        expect(tooShort).toBe(reported < TOLD);
        const towardsWhole = (found - own) / (entry.wholeRadiusM - own);
        if (reported >= TOLD) {
          expect(Math.abs(found / own - 1)).toBeLessThan(FINER * ALLOWED.partRadius);
        } else {
          expect(towardsWhole).toBeGreaterThan(0);
          expect(towardsWhole).toBeLessThan(1);
        }
      }
    });

    it(`${title}: would show a groove forgotten, a ski that does not twist, a moment not at the centroid`, () => {
      const wrong = [
        solveTwisting(entry, 120, { law: virginSnow }),
        solveTwisting(entry, 120, { as: { ...ski, torsion: null } }),
        solveTwisting(entry, 120, { law: atTheEdge }),
      ];
      for (const answer of wrong) {
        const off = readings(answer, entry).map(r => Math.abs(r.found - r.expected) / r.allowed);
        expect(Math.max(...off)).toBeGreaterThan(2);
      }
    });
  }
});
