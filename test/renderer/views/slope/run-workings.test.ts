import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { inSi, USUAL } from '../../../../core/conditions/index.ts';
import { airDensity } from '../../../../core/run/index.ts';
import type { Working } from '../../../../core/working/index.ts';
import { PLAN_FIELDS, type RunPlan, runPlan } from '../../../../renderer/answers/jobs/run-plan.ts';
import {
  explainedAt,
  hardestRow,
  leastGrip,
  onEdge,
  weakestRow,
} from '../../../../renderer/answers/moment.ts';
import type { PairRun } from '../../../../renderer/answers/runs.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import { EMPTY_PROJECT, load, PAIR_MARKS, ski } from '../../../../renderer/state/index.ts';
import { altitudeOf } from '../../../../renderer/views/slope/altitude.ts';
import { holdWorking, loadWorking } from '../../../../renderer/views/slope/row-workings.ts';
import { bookWorking, endSpeedWorking } from '../../../../renderer/views/slope/run-workings.ts';
import { rowAt } from '../../../../renderer/views/slope/skids.ts';

load(EMPTY_PROJECT);
const pair = demoPairs[0]!;
const plan: RunPlan = {
  ...inSi(USUAL, PLAN_FIELDS),
  turn: { sidecutRadius: 12.2 },
  ground: { kind: 'even', angle: 0.25 },
  programme: { kind: 'linked', peakEdge: 0.9, period: 3, turns: 4, shape: 'trapezoid' },
  mass: 70,
  friction: 0.05,
  dragArea: 0.4,
  airDensity: 1.1,
  startSpeed: 9,
  baseBevel: 0.01,
  wallStrength: 600e3,
  contactLength: 1.36,
  legShortest: 0.65,
  legLongest: 1,
};
const answer = runPlan(plan);
if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
const { track } = answer;
const run: PairRun = {
  pair: { id: 'a', name: pair.name, pair, ski: ski(pair), mark: PAIR_MARKS[0]!, active: true },
  plan,
  track,
  rhythm: null,
};

function ranOn(ground: RunPlan['ground'], startSpeed = plan.startSpeed) {
  const changed = { ...plan, ground, startSpeed };
  const found = runPlan(changed);
  if (!found.ok) throw new Error(JSON.stringify(found.problem));
  return { plan: changed, track: found.track };
}

test.each([endSpeedWorking(run), bookWorking(run)])('$title follows from its formula', working => {
  const scope = Object.fromEntries(working.inputs.map(input => [input.name, input.value]));
  expect(evaluate(working.formula, scope)).toBeCloseTo(working.result.value, 4);
});

const value = (working: Working) =>
  evaluate(
    working.formula,
    Object.fromEntries(working.inputs.map(input => [input.name, input.value])),
  ) as number;

test.each([
  ['even', run],
  ['roller', { ...run, ...ranOn({ kind: 'roller' }) }],
] as const)('load and hold at a row follow from their formulas on %s ground', (_, each) => {
  for (const row of [hardestRow(each.track), weakestRow(each.track), 150]) {
    const load = loadWorking(each, row);
    expect(value(load)).toBeCloseTo(load.result.value, 6);
    // The push may turn sharply at a row, which a difference of rows smooths over.
    expect(Math.abs(load.result.value / each.track.load[row]! - 1)).toBeLessThan(0.05);
    if (!onEdge(each.track, row)) continue;
    expect(value(holdWorking(each, row))).toBeCloseTo(each.track.hold[row]!, 4);
  }
});

test('the chain follows from its formulas and agrees with the track', () => {
  const slow = { ...run, ...ranOn(plan.ground, 4) };
  const row = rowAt(slow.track, 0.75);
  const { moment, chain } = explainedAt(slow, row)!;
  for (const working of chain) {
    expect(value(working) / working.result.value, working.key).toBeCloseTo(1, 9);
  }
  const reported = (key: string) => chain.find(working => working.key === key)!.result.value;
  expect(reported('run.radius')).toBeCloseTo(slow.track.radius[row]!, 6);
  expect(reported('run.hold')).toBeCloseTo(slow.track.hold[row]!, 9);
  expect(moment.leanFromBalance).toBeCloseTo(moment.lean, 2);
});

test('a banked turn holds with nothing to spare and does not skid', () => {
  const changed = { ...plan, programme: { kind: 'banked', traverse: 1, turns: 2 } as const, startSpeed: 5 };
  const found = runPlan(changed);
  if (!found.ok) throw new Error(JSON.stringify(found.problem));
  const banked = { ...run, plan: changed, track: found.track };
  const row = hardestRow(banked.track);
  const { moment, words } = explainedAt(banked, row)!;
  expect(moment.hold).toBeCloseTo(0, 4);
  expect(words.verdict.key).toBe('run.carvesWithoutGrip');
  expect(value(holdWorking(banked, row))).toBeCloseTo(0, 4);
});

test('the hardest row carries the greatest load of the ski on its edge', () => {
  expect(track.loadBodyWeights[hardestRow(track)]).toBeCloseTo(track.summary.maxLoadBodyWeights, 2);
});

test('altitude is read back from the density of the air', () => {
  for (const altitude of [0, 900, 2500, 4000]) {
    expect(altitudeOf(airDensity(altitude))).toBe(altitude);
  }
  expect(altitudeOf(1.3)).toBe(0);
});

test('grip is judged past ten degrees of edge, and its least is that of the weakest row', () => {
  const row = weakestRow(track);
  expect(Math.abs(track.edge[row]!)).toBeGreaterThanOrEqual(Math.PI / 18);
  expect(leastGrip(track)).toBe(track.hold[row]!);
  const flat = { ...track, edge: track.edge.map(() => 0.1) };
  expect(leastGrip(flat)).toBeNull();
});
