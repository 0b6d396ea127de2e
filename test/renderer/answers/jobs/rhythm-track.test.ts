import { beforeAll, describe, expect, it, test } from 'vitest';
import { HELD_BACK_BY, type Rhythm, rhythm } from '../../../../core/line/index.ts';
import { evenSlope, Phase, turnOf } from '../../../../core/run/index.ts';
import { GRAVITY } from '../../../../core/skier/index.ts';

import { type RhythmTrack, rhythmTrack } from '../../../../renderer/answers/jobs/rhythm-track.ts';
import type { PairRun } from '../../../../renderer/answers/runs.ts';
import { LIMITS, limitStretches, limitsMet } from '../../../../renderer/views/slope/limit-words.ts';
import { polesOf } from '../../../../renderer/views/slope/plan-figure.tsx';
import { REFERENCE_SKIER } from '../../../core/line/questions.ts';

const RAD = Math.PI / 180;
const GATES = 4;
let found: Rhythm;
let made: RhythmTrack;

beforeAll(() => {
  const answer = rhythm({
    spacing: 10,
    offset: 3.2,
    conditions: {
      ski: turnOf({ sidecutRadius: 12.5 }),
      contactLength: 1.4,
      baseBevel: 0,
      outerShare: 0.7,
      skier: REFERENCE_SKIER,
      friction: 0.05,
      scrape: 1,
      wallStrength: Number.POSITIVE_INFINITY,
      airDensity: 1.1,
      slope: evenSlope(19 * RAD),
      clearance: 0.3,
    },
  });
  if (!answer.ok) throw new Error(answer.limit);
  found = answer;
  made = rhythmTrack(found, GATES);
});

describe('a rhythm as a track', () => {
  it('repeats the turn from gate to gate, mirrored', () => {
    const { track } = made;
    expect(track.summary.seconds).toBeCloseTo(GATES * found.secondsPerGate, 9);
    expect(track.summary.turns).toBe(GATES);
    const half = found.run.t.length - 1;
    for (const row of [3, 17, 40]) {
      expect(track.x[row + half]).toBeCloseTo(-track.x[row]!, 9);
      expect(track.lean[row + half]).toBeCloseTo(-track.lean[row]!, 9);
      expect(track.edge[row + 2 * half]).toBeCloseTo(track.edge[row]!, 9);
      expect(track.y[row + half]! - track.y[row]!).toBeCloseTo(10, 9);
      expect(track.leg[row + half]).toBeCloseTo(track.leg[row]!, 9);
    }
  });

  it('has no seam where one turn passes into the next', () => {
    const { track } = made;
    const half = found.run.t.length - 1;
    for (const column of [track.x, track.massX, track.y, track.massY, track.edge, track.lean, track.load]) {
      const range = Math.max(...column) - Math.min(...column);
      const step = (row: number) => Math.abs(column[row]! - column[row - 1]!);
      expect(step(half + 1)).toBeLessThan(3 * Math.max(step(half - 1), step(half + 3)) + 1e-3 * range);
    }
    expect(track.t.every((t, i) => i === 0 || t > track.t[i - 1]!)).toBe(true);
  });

  it('keeps skis and mass a leg apart, and presses with the push', () => {
    const { track } = made;
    for (const row of [0, 20, 70, 130]) {
      const across = Math.hypot(track.massX[row]! - track.x[row]!, track.massY[row]! - track.y[row]!);
      expect(across).toBeCloseTo(track.leg[row]! * Math.abs(Math.sin(track.lean[row]!)), 9);
      expect(track.load[row]).toBeCloseTo(track.loadBodyWeights[row]! * REFERENCE_SKIER.mass * GRAVITY, 9);
    }
  });

  it('spends what the hill and the legs give: the book closes and speed comes back each gate', () => {
    const { energy } = made.track;
    const half = found.run.t.length - 1;
    expect(made.track.summary.energyErrorRatio).toBeLessThan(0.01);
    expect(energy.kinetic[half]! / energy.drop[half]!).toBeCloseTo(0, 6);
    const { friction, scrape, drag, legs } = found.run.energy;
    expect(energy.friction[half]! / REFERENCE_SKIER.mass).toBeCloseTo(friction, 3);
    expect(energy.drag[half]! / REFERENCE_SKIER.mass).toBeCloseTo(drag, 4);
    expect(energy.legs[half]! / REFERENCE_SKIER.mass).toBeCloseTo(legs, 3);
    expect(energy.scrape[half]! / scrape / REFERENCE_SKIER.mass).toBeCloseTo(1, 1);
  });

  it('says in every row what holds the skier back', () => {
    const { heldBackBy, track } = made;
    expect(heldBackBy).toHaveLength(track.t.length);
    expect(heldBackBy.slice(0, 10)).toEqual([...found.run.limit.slice(0, 10)].map(i => HELD_BACK_BY[i]));
    expect(
      track.phase.every(phase => phase === Phase.Holding || phase === Phase.Flat || phase === Phase.Slipping),
    ).toBe(true);
  });
});

test('stretches of one limit cover the rows it is met in; flicker is told as what it mostly is', () => {
  const list = [
    ...Array<'push'>(20).fill('push'),
    'leg speed' as const,
    ...Array<'push'>(9).fill('push'),
    ...Array<'nothing'>(10).fill('nothing'),
    ...Array<'hold'>(12).fill('hold'),
  ];
  const stretches = limitStretches(list);
  expect(stretches.map(each => each.by)).toEqual(['push', 'hold']);
  expect(stretches[0]).toMatchObject({ from: 0 });
  expect(stretches[1]!.to).toBe(list.length - 1);
  expect(limitsMet(stretches)).toEqual(['push', 'hold']);
  expect(LIMITS).toHaveLength(HELD_BACK_BY.length - 1);
});

test('poles stand from side to side where the skis pass them', () => {
  const plan = { programme: { kind: 'rhythm', spacing: 10, offset: 3.2, gates: GATES } } as PairRun['plan'];
  const poles = polesOf({ plan });
  expect(poles).toHaveLength(GATES + 1);
  const half = found.run.t.length - 1;
  poles.forEach(({ x, y }, i) => {
    const row = i * half;
    expect(made.track.y[row]).toBeCloseTo(y, 6);
    // Outside the pole by the clearance.
    expect(Math.abs(made.track.x[row]!) - Math.abs(x)).toBeGreaterThan(0.3 - 1e-4);
    expect(Math.sign(made.track.x[row]!)).toBe(Math.sign(x));
  });
});
