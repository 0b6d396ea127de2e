// @module-tag slow
/** The wall of the groove as a limit of the quickest turn: kept, worth what it is told to be, and what makes ice matter. */
import { describe, expect, test } from 'vitest';
import { usualWallStrength } from '../../../core/carve/index.ts';
import {
  type Rhythm,
  type RhythmQuestion,
  rhythm,
  worthOf,
  worthOfCurvature,
} from '../../../core/line/index.ts';
import { GRAVITY } from '../../../core/skier/index.ts';
import { demoSkis, grooveSurface } from './demo-grooves.ts';
import { conditionsOf, DEGREE, SLALOM, slalom } from './questions.ts';

const ski = demoSkis.find(({ name }) => name.startsWith('Rowan'))!;
const surfaces = new Map([1e9, 1e10, 3e10].map(hardness => [hardness, grooveSurface(ski, hardness)]));

function on(hardness: number, more: Partial<RhythmQuestion['conditions']> = {}): RhythmQuestion {
  return slalom({
    ...conditionsOf({ ...SLALOM, slopeDeg: 15 }),
    ski: surfaces.get(hardness)!,
    contactLength: ski.contactLength,
    baseBevel: ski.baseBevel,
    wallStrength: usualWallStrength(hardness),
    ...more,
  });
}

function solved(question: RhythmQuestion, from?: Rhythm): Rhythm {
  const answer = rhythm(question, { from });
  if (!answer.ok) throw new Error(`${answer.reason}: ${answer.limit} at ${answer.at}`);
  return answer;
}

const injected = solved(on(3e10));
const wornOut = solved(on(3e10, { wallStrength: 0.6 * usualWallStrength(3e10) }));

describe('the wall of snow', () => {
  test('is not asked for more than it bears at any place, reckoned anew from depth and force', () => {
    for (const { run, question } of [injected, wornOut]) {
      const { wallStrength, skier } = question.conditions;
      const six = new Float64Array(6);
      let reached = 0;
      for (const [k, edge] of run.edge.entries()) {
        const load = 0.7 * skier.mass * GRAVITY * run.push[k]!;
        question.conditions.ski.wallArea(edge, load, six);
        const sideways = load * Math.sin(run.lean[k]!) * Math.tanh(edge / (4 * DEGREE));
        expect(sideways).toBeLessThanOrEqual(wallStrength * six[0]! * (1 + 1e-6) + 1e-3);
        if (sideways > 0.999 * wallStrength * six[0]!) reached++;
      }
      expect(reached).toBeGreaterThan(3);
      expect(run.limits.some(({ by }) => by === 'wall')).toBe(true);
    }
  });

  test('costs nothing on groomed snow, and the harder the snow the more', () => {
    const without = (hardness: number) => solved(on(hardness, { wallStrength: Infinity })).secondsPerGate;
    const cost = (found: Rhythm, hardness: number) => found.secondsPerGate / without(hardness) - 1;
    expect(Math.abs(cost(solved(on(1e9)), 1e9))).toBeLessThan(1e-5);
    const hard = cost(solved(on(1e10)), 1e10);
    const ice = cost(injected, 3e10);
    expect(hard).toBeGreaterThan(-1e-5);
    expect(ice).toBeGreaterThan(Math.max(0.01, hard));
    expect(cost(wornOut, 3e10)).toBeGreaterThan(2 * ice);
  });

  test('asks for more edge than lean on ice', () => {
    const angulation = ({ run }: Rhythm) => {
      let row = 0;
      for (let k = 0; k < run.push.length; k++) {
        if (run.push[k]! * Math.abs(run.lean[k]!) > run.push[row]! * Math.abs(run.lean[row]!)) row = k;
      }
      return Math.abs(run.edge[row]!) - Math.abs(run.lean[row]!);
    };
    expect(angulation(wornOut)).toBeGreaterThan(angulation(injected));
  });

  test('and its strength is worth what solving anew says, as is another groove, and mass', () => {
    const of = (found: Rhythm) => worthOf(found.chain, found.answer, found.question.conditions, [0]);
    const strength = usualWallStrength(3e10);
    const anew = (more: Partial<RhythmQuestion['conditions']>) =>
      solved(on(3e10, more), injected).secondsPerGate;
    const byStrength =
      (anew({ wallStrength: 1.002 * strength }) - anew({ wallStrength: 0.998 * strength })) /
      (0.004 * strength);
    expect(Math.abs(of(injected).inputs.wallStrength / byStrength - 1)).toBeLessThan(0.02);
    const { skier } = injected.question.conditions;
    const byMass =
      (anew({ skier: { ...skier, mass: 80.5 } }) - anew({ skier: { ...skier, mass: 79.5 } })) / 1;
    expect(Math.abs(of(injected).inputs.mass / byMass - 1)).toBeLessThan(0.02);
    // Snow a little harder: the groove both turns and bears otherwise.
    const harder = grooveSurface(ski, 3.06e10);
    const reported = worthOfCurvature(of(injected).groove, injected.question.conditions.ski, harder);
    const found = anew({ ski: harder }) - injected.secondsPerGate;
    expect(Math.abs(reported / found - 1), `${reported} told, ${found} solved anew`).toBeLessThan(0.05);
  });
});
