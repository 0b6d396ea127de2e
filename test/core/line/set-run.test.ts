/** One run through gates: from rest, at a pace, told gate by gate, and what other conditions make of it. */
import { describe, expect, test } from 'vitest';
import { cosineTurnSurface } from '../../../core/carve/index.ts';
import {
  changeWorths,
  gapAlong,
  gateReadings,
  quickestRun,
  type SetQuestion,
  type SetRun,
  whatIf,
  worthOf,
} from '../../../core/line/index.ts';
import { startSpeedWorth } from '../../../core/line/set-run.ts';
import { GRAVITY } from '../../../core/skier/index.ts';
import { conditionsOf, SLALOM } from './questions.ts';

const stages = { stages: 12 };
const conditions = { ...conditionsOf({ ...SLALOM, slopeDeg: 15 }), ski: cosineTurnSurface(12.5) };
const poles = [1, -1, 1, -1].map((right, i) => ({
  x: right * 1.6,
  y: (i + 1) * 10,
  turn: -right as 1 | -1,
}));
const question: SetQuestion = { conditions, poles, startSpeed: 9 };

function solved(request: SetQuestion, from: readonly SetRun[] = []): SetRun {
  const run = quickestRun(request, { ...stages, from });
  if (!run.ok) throw new Error(JSON.stringify(run));
  return run;
}
const run = solved(question);

describe('from rest', () => {
  test('the first metre and a half a second are fallen straight', () => {
    const rest = solved({ ...question, startSpeed: 0 });
    const rolling = solved({ ...question, startSpeed: 1.5 });
    const sine = Math.sin((15 * Math.PI) / 180);
    const pull = GRAVITY * (sine - conditions.friction * Math.sqrt(1 - sine * sine));
    expect(rest.seconds - rolling.seconds).toBeCloseTo(1.5 / pull, 6);
    expect(startSpeedWorth(rest)).toBeCloseTo(-1 / pull, 6);
    expect(rest.seconds).toBeGreaterThan(run.seconds);
  });

  test('on a slope that does not pull the start speed is asked for', () => {
    const flat = { sine: () => 0.02, curvature: () => 0 };
    expect(() =>
      quickestRun({ ...question, conditions: { ...conditions, slope: flat }, startSpeed: 0 }),
    ).toThrowError(/startSpeed/);
  });
});

describe('at a pace', () => {
  test('nobody goes faster, and it takes longer than riding free', () => {
    const pace = 9.5;
    const kept = solved({ ...question, pace }, [run]);
    expect(Math.max(...kept.run.massSpeed)).toBeLessThan(pace + 0.021);
    expect(kept.seconds).toBeGreaterThan(run.seconds);
  });
});

describe('gate by gate', () => {
  const gates = gateReadings(run.run, run.poleNodes);

  test('times and splits are those of the poles', () => {
    expect(gates).toHaveLength(4);
    expect(gates.map(({ seconds }) => seconds)).toEqual(run.poleNodes.map(node => run.run.t[node]));
    expect(gates.reduce((sum, { split }) => sum + split, 0)).toBeCloseTo(gates[3].seconds, 12);
  });

  test('edge, load and radius are what the run has there', () => {
    const greatest = Math.max(...run.run.edge.map(Math.abs));
    expect(Math.max(...gates.map(({ edge }) => edge))).toBe(greatest);
    expect(Math.max(...gates.map(({ load }) => load))).toBe(Math.max(...run.run.push));
    for (const { radius, drift } of gates) {
      expect(radius).toBeGreaterThan(1);
      expect(drift).toBeGreaterThanOrEqual(0);
    }
  });

  test('a run is nowhere behind itself, and a slower one behind by the whole gap at the end', () => {
    const slower = solved({ ...question, conditions: { ...conditions, friction: 0.1 } }, [run]);
    expect(gapAlong(run.run, run.run).gap.every(gap => gap === 0)).toBe(true);
    expect(gapAlong(slower.run, run.run).gap.at(-1)).toBeCloseTo(slower.seconds - run.seconds, 9);
  });
});

describe('what if', () => {
  const worth = worthOf(run.chain, run.answer, conditions, run.poleNodes);
  const inputs = { ...worth.inputs, startSpeed: startSpeedWorth(run) };
  const reported = { inputs, skiWorths: [] };
  const request = (more: object, skier: object = {}) => ({
    conditions: { ...conditions, ...more, skier: { ...conditions.skier, ...skier } },
    startSpeed: 9,
  });

  test.each([
    ['friction', request({ friction: 0.045 })],
    ['clearance', request({ clearance: conditions.clearance + 0.02 })],
    ['strength', request({}, { pushMost: conditions.skier.pushMost + 0.02 })],
    ['drag area', request({}, { dragArea: conditions.skier.dragArea + 0.02 })],
    ['start speed', { ...request({}), startSpeed: 9.2 }],
  ])('%s: the estimate is what solving anew finds, to a tenth of it', (_, to) => {
    const estimate = whatIf(reported, request({}), to, [1e9, 1e9]);
    const anew = solved({ ...question, ...to }, [run]).seconds - run.seconds;
    expect(estimate / anew).toBeGreaterThan(0.9);
    expect(estimate / anew).toBeLessThan(1.1);
  });

  test('nothing changed is worth nothing, twice the hardness what was found for it', () => {
    expect(whatIf(reported, request({}), request({}), [1e9, 1e9])).toBe(0);
    const hard = { change: 'hardness', by: 100, unit: '%', seconds: 0.12 } as const;
    expect(whatIf({ inputs, skiWorths: [hard] }, request({}), request({}), [1e9, 4e9])).toBeCloseTo(0.24, 12);
  });

  test('changes are told dearest first', () => {
    const seconds = changeWorths(inputs, []).map(each => Math.abs(each.seconds));
    expect(seconds).toEqual(seconds.toSorted((a, b) => b - a));
    expect(changeWorths(worth.inputs, []).some(({ input }) => input === 'startSpeed')).toBe(false);
  });
});

describe('gates that cannot be run', () => {
  const told = (gates: SetQuestion['poles']) => {
    try {
      quickestRun({ ...question, poles: gates }, stages);
    } catch (error) {
      return error;
    }
    return null;
  };

  test('fewer than two and more than two hundred are refused with what is accepted', () => {
    const accepted = { from: 2, to: 200, whole: true };
    expect(told(poles.slice(0, 1))).toMatchObject({ field: 'gates', found: 1, accepted });
    const many = Array.from({ length: 201 }, (_, i) => ({ ...poles[i % 2], y: 10 * (i + 1) }));
    expect(told(many)).toMatchObject({ field: 'gates', found: 201 });
  });

  test('one beside or above the one before is refused by its number and place', () => {
    const back = poles.map((pole, i) => (i === 2 ? { ...pole, y: 19 } : pole));
    expect(told(back)).toMatchObject({
      field: 'gates[3]',
      accepted: { from: 21.5, quantity: 'distance' },
      because: { key: 'line.gateFurtherDown' },
    });
  });

  test('a set no pace can be kept through names the limit, not the method', () => {
    const wide = poles.map(pole => ({ ...pole, x: 6 * Math.sign(pole.x), y: 0.4 * pole.y }));
    const run = quickestRun({ ...question, poles: wide }, stages);
    expect(run.ok).toBe(false);
    if (!run.ok) expect(run.limit).not.toMatch(/rhythm|^$/);
  });
});
