// @module-tag slow

import { expect, test } from 'vitest';
import { cosineTurnSurface } from '../../../core/carve/index.ts';
import {
  type Rhythm,
  type RhythmQuestion,
  rhythm,
  type Worth,
  worthOf,
  worthOfCurvature,
} from '../../../core/line/index.ts';
import { ChainSolver } from '../../../core/numeric/index.ts';
import { told } from '../fault/told.ts';
import { conditionsOf, DEGREE, GIANT, giant, SLALOM, slalom } from './questions.ts';

function solved(question: RhythmQuestion, from?: Rhythm): Rhythm {
  const answer = rhythm(question, { from });
  if (!answer.ok) throw new Error(`${answer.reason}: ${answer.limit} at ${answer.at}`);
  return answer;
}

const base = { slalom: solved(slalom()), giant: solved(giant()) };

test('passes both poles on their outside, and the end mirrors the beginning', () => {
  for (const { run, question } of Object.values(base)) {
    const last = run.t.length - 1;
    const across = question.offset / 2 + question.conditions.clearance;
    expect(run.x[0]).toBeGreaterThanOrEqual(across - 1e-6);
    expect(run.x[last]).toBeCloseTo(-run.x[0], 6);
    for (const column of ['heading', 'lean', 'leanRate', 'edge', 'mismatch'] as const) {
      expect(run[column][last]).toBeCloseTo(-run[column][0], 6);
    }
    for (const column of ['massSpeed', 'leg', 'legSpeed', 'push', 'drift'] as const) {
      expect(run[column][last]).toBeCloseTo(run[column][0], 6);
    }
  }
});

test('keeps every limit of the skier and the shelf', () => {
  for (const { run, question } of Object.values(base)) {
    const { skier, baseBevel } = question.conditions;
    const within = (column: Float64Array, low: number, high: number) => {
      expect(Math.min(...column)).toBeGreaterThanOrEqual(low - 1e-6);
      expect(Math.max(...column)).toBeLessThanOrEqual(high + 1e-6);
    };
    within(run.push, 0.1, skier.pushMost);
    within(run.leg, skier.legShortest, skier.legLongest);
    within(run.legSpeed, -skier.legSpeed, skier.legSpeed);
    within(run.edge, -skier.edgeMost, skier.edgeMost);
    for (const [k, edge] of run.edge.entries()) {
      const bite = Math.tanh(edge / (4 * DEGREE));
      expect(bite * (edge - run.lean[k]) - baseBevel + DEGREE).toBeGreaterThanOrEqual(-1e-6);
    }
  }
});

test('the mass swings less than the skis, more so in slalom', () => {
  const share = ({ run }: Rhythm) => Math.max(...run.massX) / Math.max(...run.x);
  expect(share(base.slalom)).toBeLessThan(0.65);
  expect(share(base.giant)).toBeGreaterThan(0.75);
});

test('is not beaten by 200 feasible neighbours', () => {
  // The same equations and limits with other prices of the rates: each answer is feasible here too.
  const coarse = rhythm(giant(), { stages: 20 });
  if (!coarse.ok) throw new Error(coarse.limit);
  const { chain } = coarse;
  const { problem } = chain;
  const solver = new ChainSolver(problem);
  const width = problem.stage.dataCount;
  let seed = 12345;
  const random = () => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed / 2147483648;
  };
  let tried = 0;
  for (let i = 0; i < 200; i++) {
    const stageData = problem.stageData.slice();
    for (let at = width - 1; at < stageData.length; at += width) stageData[at] = 40 * random() ** 4;
    const other = solver.solve(coarse.answer, { barrier: 1e-4, mostSteps: 80 }, { ...problem, stageData });
    if (!other.ok) continue;
    tried++;
    const seconds = secondsOf(coarse, other.x, other.u);
    expect(seconds).toBeGreaterThan(coarse.secondsPerGate - 2e-4);
  }
  expect(tried).toBeGreaterThan(150);
});

function secondsOf({ chain }: Rhythm, x: Float64Array, u: Float64Array): number {
  const { problem } = chain;
  const [n, m] = [problem.states.length, problem.controls.length];
  const input = new Float64Array(n + m);
  const out = new Float64Array(problem.stage.outputCount);
  let seconds = 0;
  for (let k = 0; k < problem.stages; k++) {
    for (let i = 0; i < n; i++) input[i] = 0.5 * (x[k * n + i] + x[(k + 1) * n + i]);
    for (let i = 0; i < m; i++) input[n + i] = u[k * m + i];
    problem.stage.values(input, problem.stageData, k * problem.stage.dataCount, out);
    seconds += problem.step[k] * out[n + 1];
  }
  return seconds;
}

test('what an input is worth agrees with solving anew', () => {
  const worth = (of: Rhythm): Worth => worthOf(of.chain, of.answer, of.question.conditions, [0]).inputs;
  const cases: readonly (readonly [keyof Worth, number, 'slalom' | 'giant'])[] = [
    ['friction', 0.002, 'slalom'],
    ['friction', 0.002, 'giant'],
    ['airDensity', 0.05, 'giant'],
    ['scrape', 0.05, 'giant'],
    ['clearance', 0.005, 'slalom'],
    ['clearance', 0.005, 'giant'],
    ['dragArea', 0.01, 'giant'],
    ['mass', 1, 'giant'],
    ['pushMost', 0.01, 'giant'],
    ['legSpeed', 0.01, 'slalom'],
    ['pushRate', 0.05, 'slalom'],
  ];
  for (const [input, step, which] of cases) {
    const [trial, ask] = which === 'slalom' ? [SLALOM, slalom] : [GIANT, giant];
    const usual = conditionsOf(trial);
    const at = (by: number) => {
      const conditions =
        input in usual
          ? { ...usual, [input]: (usual[input as keyof typeof usual] as number) + by }
          : conditionsOf(trial, { [input]: usual.skier[input as keyof typeof usual.skier] + by });
      return solved(ask(conditions), base[which]).secondsPerGate;
    };
    const again = (at(step) - at(-step)) / (2 * step);
    const reported = worth(base[which])[input];
    expect(
      Math.abs(reported / again - 1),
      `${which} ${input}: ${reported} told, ${again} solved anew`,
    ).toBeLessThan(0.02);
  }
});

test("what the ski's own radius is worth agrees with solving anew", () => {
  const { groove } = worthOf(base.giant.chain, base.giant.answer, base.giant.question.conditions, [0]);
  const other = { ...conditionsOf(GIANT), ski: cosineTurnSurface(30.2) };
  const again = solved(giant(other), base.giant).secondsPerGate - base.giant.secondsPerGate;
  const reported = worthOfCurvature(groove, base.giant.question.conditions.ski, other.ski);
  expect(Math.abs(reported / again - 1)).toBeLessThan(0.03);
});

test('a question that no turn answers is refused by the limit that could not be kept', {
  timeout: 240_000,
}, () => {
  const answer = rhythm(
    { ...slalom(conditionsOf({ ...SLALOM, slopeDeg: 1, pushMost: 1.1 })), spacing: 4, offset: 12 },
    { beginnings: 1 },
  );
  if (answer.ok) throw new Error(`${answer.secondsPerGate} s found`);
  expect(answer.limit).not.toBe('');
  expect(answer.at).toBeGreaterThanOrEqual(0);
  expect(answer.at).toBeLessThanOrEqual(1);
});

test('a spacing out of range is told', () => {
  expect(told(() => rhythm({ ...slalom(), spacing: 1 }))).toEqual([
    'spacing: 1.0\u00a0m is not accepted; accepted is a number from 2.0 to 100.0\u00a0m',
  ]);
});
