import { describe, expect, it } from 'vitest';
import {
  buildRadiusTable,
  type CarvingSki,
  type Equilibrium,
  grooveSolver,
} from '../../../core/carve/index.ts';
import { fitTrack } from '../../../core/carve/track-radius.ts';
import { say } from '../../../core/language/index.ts';
import { hardness, radians, slalomSki } from './demo.ts';
import { demoPairs } from './demo-pairs.ts';

const demo = (name: string): CarvingSki => {
  const found = demoPairs.find(([file]) => file.startsWith(name));
  if (!found) throw new Error(`no demo pair ${name}`);
  return found[1];
};

/** Answers degree by degree. */
function byDegree(ski: CarvingSki, snow: number, load: number, from: number, to: number): Equilibrium[] {
  const solver = grooveSolver(ski);
  return Array.from({ length: to - from + 1 }, (_, i) => {
    const answer = solver.solve({
      edgeAngle: radians(from + i),
      load,
      hardness: hardness(snow),
      fore: 0,
    });
    if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
    return answer;
  });
}

/** Greatest change from one degree to the next of what the cosine rule leaves of a radius. */
function greatestStep(answers: readonly Equilibrium[], radius: (answer: Equilibrium) => number): number {
  const left = answers.map(answer => radius(answer) / Math.cos(answer.conditions.edgeAngle));
  return Math.max(...left.slice(1).map((value, i) => Math.abs(value / left[i] - 1)));
}

describe('turn radius', () => {
  it('is the quadratic fit of the lateral position over the whole loaded edge', () => {
    const answer = byDegree(slalomSki, 1, 1200, 50, 50)[0];
    // The same fit from the published profile alone: node by node, coarser than the solver's own points.
    const { x, lateral, lineLoad, turnRadius } = answer;
    const { curvature } = fitTrack(x, lateral, lineLoad, 0, x.length);
    expect(Math.abs(turnRadius * curvature - 1)).toBeLessThan(0.002);
  });

  it.each([
    ['juniper', 10, 200],
    ['juniper', 0.1, 200],
    ['hazel', 0.1, 300],
    ['maple', 1, 200],
  ] as const)(
    '%s on %s N/mm³ under %s N: stays even where the part behind the boot unloads',
    (name, snow, load) => {
      const answers = byDegree(demo(name), snow, load, 60, 74);
      expect(greatestStep(answers, answer => answer.rear.radius)).toBeGreaterThan(0.03);
      expect(greatestStep(answers, answer => answer.turnRadius)).toBeLessThan(0.01);
    },
  );

  it.each(demoPairs)(
    '%s: no step of over 1 % a degree from 400 to 1200 N on groomed and hard snow, 4–72°',
    (_name, ski) => {
      for (const snow of [1, 10]) {
        for (const load of [400, 1200]) {
          expect(greatestStep(byDegree(ski, snow, load, 4, 72), answer => answer.turnRadius)).toBeLessThan(
            0.01,
          );
        }
      }
    },
  );

  it('says of each part whether its load tells a radius', () => {
    const [pressed] = byDegree(demo('juniper'), 10, 1200, 30, 30);
    expect([pressed.rear.tooShort, pressed.front.tooShort]).toEqual([false, false]);
    expect([pressed.rear.share, pressed.front.share]).toEqual([1, 1]);
    const [onItsEnds] = byDegree(demo('larch'), 10, 200, 72, 72);
    expect([onItsEnds.rear.tooShort, onItsEnds.front.tooShort]).toEqual([true, true]);
    expect(onItsEnds.rear.share).toBeLessThan(0.5);
  });
});

describe('rebound', () => {
  const solver = grooveSolver(slalomSki);
  const ask = (rebound?: number) => {
    const answer = solver.solve({
      edgeAngle: radians(50),
      load: 1200,
      hardness: hardness(1),
      fore: 0,
      rebound,
    });
    return answer.ok ? answer : say(answer.reason);
  };
  const solved = (rebound?: number) => {
    const answer = ask(rebound);
    if (typeof answer === 'string') throw new Error(answer);
    return answer;
  };

  it('is 0.2 mm unless given', () => {
    expect(solved().turnRadius).toBe(solved(0.2e-3).turnRadius);
  });

  it('that is larger lets more of the edge carry, and turns tighter', () => {
    const radii = [0.05, 0.1, 0.2, 0.5, 1].map(mm => solved(mm * 1e-3));
    for (let i = 1; i < radii.length; i++) {
      expect(radii[i].turnRadius).toBeLessThan(1.0005 * radii[i - 1].turnRadius);
      const carrying = (answer: Equilibrium) => answer.lineLoad.filter(load => load > 0).length;
      expect(carrying(radii[i])).toBeGreaterThanOrEqual(carrying(radii[i - 1]));
    }
    expect(radii[0].turnRadius / radii[4].turnRadius - 1).toBeGreaterThan(0.01);
  });

  it('carries nothing where the ski has lifted clear of its groove by it', () => {
    const { x, groove, penetration, lineLoad } = solved(0.6e-3);
    let between = 0;
    for (let i = 1; i + 1 < x.length; i++) {
      const lift = (k: number) => groove[k] - penetration[k];
      const least = Math.min(lift(i - 1), lift(i), lift(i + 1));
      if (least > 0.61e-3) expect(lineLoad[i]).toBe(0);
      else if (least > 0.21e-3 && lineLoad[i] > 0) between++;
    }
    expect(between).toBeGreaterThan(3);
  });

  it('is refused outside 0.05 to 1 mm', () => {
    for (const rebound of [0.04e-3, 1.1e-3, 0, -1, Number.NaN]) {
      expect(ask(rebound)).toMatch(
        /^rebound: .* is not accepted; accepted is a number from 0.05 to 1.00\smm/,
      );
    }
    expect(typeof ask(0.05e-3)).toBe('object');
    expect(typeof ask(1e-3)).toBe('object');
  });

  it('enters a table', () => {
    const few = { edges: [0.5, 1], loads: [500, 1500] };
    const table = (rebound?: number) => {
      const built = buildRadiusTable(slalomSki, hardness(1), { ...few, rebound });
      if (built === null || 'ok' in built) throw new Error('no table');
      return built.radii;
    };
    expect(table()).toEqual(table(0.2e-3));
    expect(table(0.8e-3)[3]).toBeLessThan(table()[3]);
  });

  it.each([0.05e-3, 1e-3])('of %s m is solved over the whole range', rebound => {
    const reasons: string[] = [];
    for (const edge of [4, 25, 50, 70]) {
      for (const load of [200, 900, 3500]) {
        for (const snow of [0.04, 0.3, 5, 90]) {
          const conditions = { edgeAngle: radians(edge), load, hardness: hardness(snow), fore: 0, rebound };
          const answer = solver.solve(conditions);
          if (!answer.ok) reasons.push(JSON.stringify(answer.reason));
          else if (!(answer.residual < 1e-8))
            reasons.push(`${edge}°, ${load} N, ${snow}: ${answer.residual}`);
        }
      }
    }
    expect(reasons).toEqual([]);
  });
});
