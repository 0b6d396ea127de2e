// @module-tag slow
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CarveConditions, type CarvingSki, grooveSolver } from '../../../core/carve/index.ts';
import { degrees, giantSlalomSki, hardness, radians, rigidInTorsion, slalomSki } from './demo.ts';
import { demoPairs } from './demo-pairs.ts';

const between = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const within = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most);

/** Anywhere in the whole range, with a neighbour up to 40 % of the load and 3 degrees away. */
const somewhere = fc
  .record({
    edge: between(2, 75),
    logLoad: between(Math.log(200), Math.log(4000)),
    logSnow: between(Math.log(0.04), Math.log(90)),
    loadFactor: between(0.7, 1.4),
    tilt: between(-3, 3),
  })
  .map(({ edge, logLoad, logSnow, loadFactor, tilt }) => {
    const load = Math.exp(logLoad);
    const request: CarveConditions = {
      edgeAngle: radians(edge),
      load,
      hardness: hardness(Math.exp(logSnow)),
      fore: 0,
    };
    const near: CarveConditions = {
      ...request,
      edgeAngle: radians(within(edge + tilt, 2, 75)),
      load: within(load * loadFactor, 200, 4000),
    };
    return { request, near };
  });

const reported = ({ edgeAngle, load, hardness: snow }: CarveConditions) =>
  `${degrees(edgeAngle).toFixed(2)} degrees, ${load.toFixed(1)} N, ${(snow / 1e9).toPrecision(4)} N/mm³`;

const skis: readonly (readonly [string, CarvingSki])[] = [
  ['invented slalom ski', slalomSki],
  ['invented giant slalom ski', giantSlalomSki],
  ['invented giant slalom ski, rigid in torsion', rigidInTorsion(giantSlalomSki)],
  ...demoPairs,
];

describe('anywhere in 2–75°, 200–4000 N, 0.04–90 N/mm³', () => {
  it.each(skis)(
    '%s: the same answer from a neighbour, and the same radius, or that of the same load, to 0.2 % on twice the elements',
    (_, ski) => {
      const solver = grooveSolver(ski);
      const finer = grooveSolver(ski, { elements: 240 });
      const misses: string[] = [];
      /** Beside a jump the radius answers by several times the change of the load: what 0.2 % of that is worth. */
      const besideAFold = (request: CarveConditions) => {
        const [heavier, lighter] = [1.001, 0.999].map(factor =>
          finer.solve({ ...request, load: factor * request.load }),
        );
        if (!heavier.ok || !lighter.ok) throw new Error(`${reported(request)}: not solved beside it`);
        return Math.abs(heavier.turnRadius / lighter.turnRadius - 1);
      };
      for (const { request, near } of fc.sample(somewhere, { seed: 41, numRuns: 60 })) {
        const cold = solver.solve(request);
        const from = solver.solve(near);
        if (!cold.ok) throw new Error(JSON.stringify(cold.reason));
        if (!from.ok) throw new Error(JSON.stringify(from.reason));
        const warm = solver.solve(request, { from });
        const fine = finer.solve(request);
        if (!warm.ok) throw new Error(JSON.stringify(warm.reason));
        if (!fine.ok) throw new Error(JSON.stringify(fine.reason));
        const byStart = Math.abs(warm.turnRadius / cold.turnRadius - 1);
        const byMesh = Math.abs(fine.turnRadius / cold.turnRadius - 1);
        if (!(byStart < 1e-5)) misses.push(`start: ${reported(request)}: ${byStart}`);
        if (!(byMesh < 0.002 || byMesh < besideAFold(request)))
          misses.push(`mesh: ${reported(request)}: ${byMesh}`);
      }
      expect(misses).toEqual([]);
    },
    60_000,
  );
});

describe('a ski that stands on its ends under a light load', () => {
  it.each(skis)(
    '%s: solved on 240 elements, with the same radius to 0.2 %',
    (_, ski) => {
      const solver = grooveSolver(ski);
      const finer = grooveSolver(ski, { elements: 240 });
      const misses: string[] = [];
      for (const edge of [25, 55, 65, 75]) {
        for (const load of [200, 300, 450, 733]) {
          for (const snow of [0.3, 90]) {
            const request = { edgeAngle: radians(edge), load, hardness: hardness(snow), fore: 0 };
            const coarse = solver.solve(request);
            const fine = finer.solve(request);
            if (!coarse.ok) throw new Error(JSON.stringify(coarse.reason));
            if (!fine.ok) throw new Error(JSON.stringify(fine.reason));
            const byMesh = Math.abs(fine.turnRadius / coarse.turnRadius - 1);
            if (!(byMesh < 0.002)) misses.push(`${reported(request)}: ${byMesh}`);
          }
        }
      }
      expect(misses).toEqual([]);
    },
    60_000,
  );
});

describe('the jump from one steady groove to another on soft snow', () => {
  it.each([56, 60, 62, 63, 64, 68])('is crossed once as the load grows, at %i degrees', edge => {
    const solver = grooveSolver(slalomSki);
    const jumps: number[] = [];
    let before = Number.NaN;
    for (let load = 2600; load <= 3100; load += 10) {
      const answer = solver.solve({ edgeAngle: radians(edge), load, hardness: hardness(0.1), fore: 0 });
      if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
      if (Math.abs(answer.turnRadius / before - 1) > 0.03) jumps.push(load);
      before = answer.turnRadius;
    }
    expect(jumps).toHaveLength(1);
  });
});
