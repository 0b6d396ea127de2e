import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type CarvingSki, grooveSolver, type SnowLaw, wedgeSnow } from '../../core/carve/index.ts';

// Numbers by numpy and scipy, from independent/groove_by_scipy.py: collocation of the boundary value problem on
// untouched snow, and a Ritz method with Legendre polynomials for the groove with its memory [derived].
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
  turnRadiusM?: number;
  wholeRadiusM?: number;
  stations: Station[];
}
const file = new URL('./independent/groove-by-scipy.json', import.meta.url);
const { ski: numbers, cases } = JSON.parse(readFileSync(file, 'utf8')) as {
  ski: Record<string, number> & { ei: [number, number]; gj: [number, number] };
  cases: Case[];
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
      if (!answer.ok) throw new Error(answer.reason);
      const deepest = Math.max(...entry.stations.map(station => station.penetrationMm));
      for (const station of entry.stations) {
        const penetration = 1000 * at(answer.x, answer.penetration, station.x);
        expect(Math.abs(penetration - station.penetrationMm)).toBeLessThan(0.01 * deepest);
        const twist = (at(answer.x, answer.twist, station.x) * 180) / Math.PI;
        expect(Math.abs(twist - station.twistDeg)).toBeLessThan(0.01);
      }
      if (entry.turnRadiusM !== undefined && entry.wholeRadiusM !== undefined) {
        expect(Math.abs(answer.turnRadius / entry.turnRadiusM - 1)).toBeLessThan(0.002);
        expect(Math.abs(answer.wholeRadius / entry.wholeRadiusM - 1)).toBeLessThan(0.002);
      }
    });
  }
});
