import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CarvingSki, type Equilibrium, grooveSolver } from '../../../core/carve/index.ts';
import { say } from '../../../core/language/index.ts';
import { degrees, giantSlalomSki, hardness, radians, rigidInTorsion, slalomSki } from './demo.ts';

const ask = (edgeDeg: number, load: number, newtonPerMm3: number, fore = 0) => ({
  edgeAngle: radians(edgeDeg),
  load,
  hardness: hardness(newtonPerMm3),
  fore,
});

function solved(ski: CarvingSki, conditions: ReturnType<typeof ask>, elements?: number): Equilibrium {
  const answer = grooveSolver(ski, { elements }).solve(conditions);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
}

/** Force and moment about the rear contact point by the trapezoid rule over the published profile. */
function resultant({ x, lineLoad }: Equilibrium) {
  let force = 0;
  let moment = 0;
  for (let i = 0; i + 1 < x.length; i++) {
    const half = 0.5 * (x[i + 1] - x[i]);
    force += half * (lineLoad[i] + lineLoad[i + 1]);
    moment += half * (lineLoad[i] * x[i] + lineLoad[i + 1] * x[i + 1]);
  }
  return { force, moment };
}

describe('groove equilibrium', () => {
  it('balances force and moment to 1e-8 of the load, from the published profile alone', () => {
    for (const [conditions, fore] of [
      [ask(50, 1200, 1), 0],
      [ask(65, 700, 30, 0.05), 0.05],
      [ask(12, 3000, 0.1, -0.08), -0.08],
    ] as const) {
      const answer = solved(slalomSki, conditions);
      const { force, moment } = resultant(answer);
      expect(Math.abs(force / conditions.load - 1)).toBeLessThan(1e-8);
      const lever = slalomSki.bootCentre + fore;
      expect(Math.abs(moment / (conditions.load * lever) - 1)).toBeLessThan(1e-7);
      expect(answer.residual).toBeLessThan(1e-8);
    }
  });

  it('gives the same radius to 0.2 % on twice the elements', () => {
    for (const ski of [slalomSki, giantSlalomSki]) {
      for (const conditions of [ask(15, 1200, 1), ask(40, 1200, 0.1), ask(50, 2000, 10), ask(65, 1200, 30)]) {
        const coarse = solved(ski, conditions).turnRadius;
        const fine = solved(ski, conditions, 240).turnRadius;
        expect(Math.abs(coarse / fine - 1)).toBeLessThan(0.002);
      }
    }
  });

  it('does not depend on where it starts', () => {
    const solver = grooveSolver(slalomSki);
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 70, noNaN: true }),
        fc.double({ min: 400, max: 2500, noNaN: true }),
        fc.double({ min: -1, max: 1.5, noNaN: true }),
        fc.double({ min: 0.7, max: 1.4, noNaN: true }),
        (edge, load, logHardness, factor) => {
          const conditions = ask(edge, load, 10 ** logHardness);
          const cold = solver.solve(conditions);
          const from = solver.solve({
            ...conditions,
            load: load * factor,
            hardness: conditions.hardness / factor,
          });
          if (!cold.ok || !from.ok) throw new Error('unsolved');
          const warm = solver.solve(conditions, { from });
          if (!warm.ok) throw new Error(JSON.stringify(warm.reason));
          expect(Math.abs(warm.turnRadius / cold.turnRadius - 1)).toBeLessThan(1e-5);
          expect(Math.abs(warm.maxPenetration / cold.maxPenetration - 1)).toBeLessThan(1e-5);
        },
      ),
      { seed: 3, numRuns: 40 },
    );
  });

  it('starts from an answer on another mesh', () => {
    const from = solved(slalomSki, ask(50, 1200, 1), 80);
    const warm = grooveSolver(slalomSki).solve(ask(50, 1200, 1), { from });
    if (!warm.ok) throw new Error(JSON.stringify(warm.reason));
    expect(warm.turnRadius).toBeCloseTo(solved(slalomSki, ask(50, 1200, 1)).turnRadius, 6);
  });

  it('never lets the groove get shallower from the boot to the tail', () => {
    for (const conditions of [ask(50, 1200, 0.1), ask(60, 1200, 10), ask(20, 3000, 1)]) {
      const { x, groove, penetration } = solved(giantSlalomSki, conditions);
      for (let i = x.length - 2; i >= 0; i--) {
        expect(groove[i]).toBeGreaterThanOrEqual(groove[i + 1]);
        expect(groove[i]).toBeGreaterThanOrEqual(penetration[i]);
      }
    }
  });

  it('carries nothing where the ski has lifted clear of its groove by the rebound', () => {
    const { x, groove, penetration, lineLoad } = solved(slalomSki, ask(55, 1200, 1));
    let clear = 0;
    for (let i = 1; i + 1 < x.length; i++) {
      const lifted = (k: number) => groove[k] - penetration[k] > 0.21e-3;
      if (lifted(i - 1) && lifted(i) && lifted(i + 1)) {
        clear++;
        expect(lineLoad[i]).toBe(0);
      }
    }
    const carried = lineLoad.filter(load => load > 0).length;
    expect(carried).toBeGreaterThan(10);
    expect(clear + carried).toBeLessThanOrEqual(x.length);
  });

  it('moves the load with the fore-aft centre', () => {
    const centre = (fore: number) => {
      const { force, moment } = resultant(solved(slalomSki, ask(45, 1200, 1, fore)));
      return moment / force;
    };
    expect(centre(0.08) - centre(-0.08)).toBeCloseTo(0.16, 6);
  });

  it('holds the twist at zero under the sole, and everywhere when rigid in torsion', () => {
    const { x, twist } = solved(slalomSki, ask(50, 1200, 1));
    for (let i = 0; i < x.length; i++) {
      if (Math.abs(x[i] - slalomSki.bootCentre) <= slalomSki.soleLength / 2 + 1e-9) expect(twist[i]).toBe(0);
    }
    expect(degrees(twist[0])).toBeGreaterThan(0.5);
    const rigid = solved(rigidInTorsion(slalomSki), ask(50, 1200, 1));
    expect(rigid.twist.every(value => value === 0)).toBe(true);
  });

  it('names the input it cannot solve', () => {
    const solver = grooveSolver(slalomSki);
    const reason = (conditions: ReturnType<typeof ask>) => {
      const answer = solver.solve(conditions);
      return answer.ok ? '' : say(answer.reason);
    };
    expect(reason(ask(89, 1200, 1))).toMatch(/^edgeAngle: 89\.0° is not accepted/);
    expect(reason(ask(50, -3, 1))).toMatch(/^load: −3\sN is not accepted/);
    expect(reason(ask(50, 1200, 0))).toMatch(/^hardness: 0.00\sN\/mm³ is not accepted/);
    expect(reason(ask(50, 1200, Number.NaN))).toMatch(/^hardness: – is/);
    expect(reason(ask(50, 1200, 1, 2))).toMatch(
      /^fore: 2000\smm is not accepted; accepted is a number from −\d+ to \d+\smm/,
    );
  });
});
