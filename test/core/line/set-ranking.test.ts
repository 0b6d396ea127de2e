// @module-tag slow
/** Pairs ranked by their quickest runs: what a gap comes of, how surely it is known, and when there is no pick. */
import { describe, expect, test } from 'vitest';
import { cosineTurnSurface } from '../../../core/carve/index.ts';
import { say } from '../../../core/language/index.ts';
import {
  type PairOnSnow,
  quickestRun,
  type RankingQuestion,
  rankByQuickestRun,
  rankMany,
} from '../../../core/line/index.ts';
import { readPair, type Ski, skiOf } from '../../../core/pair/index.ts';
import { sidecut } from '../../../core/shape/index.ts';
import { least } from '../pair/larch.ts';
import { conditionsOf, GIANT, SLALOM, type Trial } from './questions.ts';

/** Invented widths that have the radius; without a stiffness, so that turns follow the cosine rule. */
function skiWith(name: string, radius: number, contactLength: number): Ski {
  const [tip, tail] = [120, 110];
  const waist = (tip + tail) / 2 - (1000 * contactLength ** 2) / (4 * radius);
  const read = readPair(
    JSON.stringify({
      ...least,
      name,
      lengthMm: 1000 * contactLength + 150,
      contactLengthMm: 1000 * contactLength,
      tipWidthMm: tip,
      tailWidthMm: tail,
      waistWidthMm: waist,
      edges: { baseBevelDeg: 0, sideAngleDeg: 88 },
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read));
  return skiOf(read.pair);
}

const pair = (ski: Ski, more: Partial<PairOnSnow> = {}): PairOnSnow => ({
  ski,
  surface: cosineTurnSurface(sidecut(ski).radius),
  groove: null,
  stiffnessUnknown: false,
  ...more,
});

/** Gates in an even rhythm, the first to the right. */
function gates(count: number, spacing: number, offset: number, startSpeed: number, trial: Trial) {
  const poles = Array.from({ length: count }, (_, i) => {
    const right = i % 2 === 0 ? 1 : -1;
    return { x: (right * offset) / 2, y: (i + 1) * spacing, turn: -right as 1 | -1 };
  });
  const { ski: _, contactLength: __, baseBevel: ___, ...conditions } = conditionsOf(trial);
  return { conditions, poles, startSpeed } satisfies RankingQuestion;
}
const slalomGates = (count: number) => gates(count, 10, 3.2, 9, { ...SLALOM, slopeDeg: 15 });
const giantGates = (count: number) =>
  gates(count, 25, 8, 12, { ...GIANT, slopeDeg: 14, pushMost: 2.8, legSpeed: 1, pushRate: 12 });
const stages = { stages: 12 };

describe('pairs on a set', () => {
  const short = skiWith('Alder', 12.5, 1.4);
  const twins = rankByQuickestRun([pair(short), pair({ ...short, name: 'Aspen' })], slalomGates(4), stages);

  test('the same ski under two names is level to the hundredth, and none is picked', () => {
    const [first, second] = twins.pairs;
    expect(second.gap).toBeLessThan(0.005);
    expect(second.gapPlusMinus).toBeGreaterThan(second.gap);
    expect(twins.pick).toBeNull();
    expect(say(twins.because[0])).toBe(
      `Level: ${first.name}, ${second.name} are 0.00\u00a0s apart, no more than is known. Choose by feel.`,
    );
    expect(twins.because.slice(1).map(sentence => sentence.key)).toEqual(['line.differs', 'line.differs']);
  });

  test('what both pairs share leaves the time open and cancels in the gap', () => {
    const [first, second] = twins.pairs;
    expect(first.secondsPlusMinus).toBeGreaterThan(0.1);
    expect(second.gapPlusMinus).toBeLessThan(0.2 * first.secondsPlusMinus);
  });

  test('a waist moved by 0.2 mm, which is inside a calliper’s error, makes no difference', () => {
    const moved = { ...short, name: 'Aspen', waistWidth: short.waistWidth + 0.2e-3 };
    const { pick, pairs } = rankByQuickestRun([pair(short), pair(moved)], slalomGates(4), stages);
    expect(pick).toBeNull();
    expect(pairs[1].gap).toBeLessThan(0.02);
  });

  test('12.5 and 13 m are level in a slalom of ten gates', { timeout: 240_000 }, () => {
    const pairs = [pair(short), pair(skiWith('Birch', 13, 1.4))];
    const ranking = rankByQuickestRun(pairs, slalomGates(10), stages);
    // Skier.md's independent program: 7.919 and 7.920 s.
    expect(ranking.pairs[1].gap).toBeLessThan(0.015);
    expect(ranking.pick).toBeNull();
    expect(Math.abs(ranking.pairs[0].seconds / 7.92 - 1)).toBeLessThan(0.02);
  });

  test('a 30 m ski beats one of 12.5 m in a giant slalom by more than is uncertain', {
    timeout: 300_000,
  }, () => {
    const [tight, long] = [pair(skiWith('Alder', 12.5, 1.6)), pair(skiWith('Larch', 30, 1.6))];
    const { pairs, pick, because } = rankByQuickestRun([tight, long], giantGates(10), stages);
    // The independent program: 15.51 against 14.94 s.
    expect(pairs.map(({ name }) => name)).toEqual(['Larch', 'Alder']);
    expect(Math.abs(pairs[1].gap - 0.57)).toBeLessThan(0.2);
    expect(pairs[1].gap).toBeGreaterThan(pairs[1].gapPlusMinus);
    expect(pick).toBe(1);
    expect(because[0].key).toBe('line.quickest');
  });

  test('a pair that is barred is timed, told and not picked', () => {
    const why = { key: 'line.runStopped' } as const;
    const { pairs, pick, because } = rankByQuickestRun(
      [pair(short, { barred: why }), pair({ ...short, name: 'Aspen' })],
      slalomGates(4),
      stages,
    );
    expect(pairs).toHaveLength(2);
    expect(pick).toBe(1);
    expect(because).toContainEqual({ key: 'line.barred', values: { name: 'Alder', why } });
  });

  test('a pair whose stiffness is not known has a ± of its own', () => {
    const known = rankByQuickestRun([pair(short)], slalomGates(4), stages).pairs[0];
    const rigid = rankByQuickestRun([pair(short, { stiffnessUnknown: true })], slalomGates(4), stages);
    expect(rigid.pairs[0].secondsPlusMinus).toBeGreaterThan(known.secondsPlusMinus);
  });

  test('more speed at the start is worth what solving anew says', () => {
    const { run, startSpeedWorth } = twins.pairs[0];
    const faster = quickestRun({ ...run.question, startSpeed: 9.05 }, { ...stages, from: [run] });
    if (!faster.ok) throw new Error(faster.limit);
    expect(Math.abs((faster.seconds - run.seconds) / 0.05 / startSpeedWorth - 1)).toBeLessThan(0.05);
  });

  test('gates that no pair can pass are told with the limit, and nothing is picked', () => {
    const tooWide = { ...slalomGates(4), startSpeed: 30 };
    const { pairs, untimed, pick, because } = rankByQuickestRun([pair(short)], tooWide, stages);
    expect(pairs).toEqual([]);
    expect(pick).toBeNull();
    expect(untimed[0].failure.limit).not.toBe('');
    expect(say(because[0])).toMatch(/^Alder: no run was found; after \d+ % of the way /);
  });

  test('a ranking that is stopped says so, and tells how far it has come before', () => {
    const shares: number[] = [];
    const { untimed } = rankByQuickestRun([pair(short), pair(short)], slalomGates(4), {
      ...stages,
      onProgress: share => shares.push(share),
      cancelled: () => shares.length > 3,
    });
    expect(untimed.map(({ failure }) => failure.reason)).toEqual(['cancelled', 'cancelled']);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });
});

describe('many pairs', () => {
  test('beyond the number run whole, those quickest in the mean rhythm are, and it is said', () => {
    const many = [12.5, 16, 22, 30].map((radius, i) => pair(skiWith(`Pair ${i}`, radius, 1.4)));
    const { pairs, byRhythmAlone, because, untimed } = rankMany(many, slalomGates(3), {
      ...stages,
      whole: 2,
    });
    const whole = pairs.map(({ index }) => index);
    expect(untimed).toEqual([]);
    expect(whole.toSorted()).toEqual([0, 1]);
    expect(byRhythmAlone.map(({ index }) => index)).toEqual([2, 3]);
    expect(byRhythmAlone[0].secondsPerGate).toBeLessThan(byRhythmAlone[1].secondsPerGate!);
    expect(say(because.at(-1)!)).toMatch(/^Of 4 pairs the 2 quickest in the mean rhythm/);
  });

  test('a pair that is barred does not take the place of one that may be picked', () => {
    const barred = {
      key: 'line.failsRules',
      values: { discipline: { key: 'discipline.SL' }, rules: [] },
    } as const;
    const many = [12.5, 13, 30].map((radius, i) =>
      pair(skiWith(`Pair ${i}`, radius, 1.4), i === 0 ? { barred } : {}),
    );
    const { pairs, pick } = rankMany(many, slalomGates(3), { ...stages, whole: 2 });
    expect(pairs.map(({ index }) => index).toSorted()).toEqual([1, 2]);
    expect(pick === null || pick === 1).toBe(true);
  });
});

test('at a pace nothing is ranked by time', () => {
  const { pick, because } = rankByQuickestRun(
    [pair(skiWith('Alder', 12.5, 1.4)), pair(skiWith('Birch', 20, 1.4))],
    { ...slalomGates(3), pace: 9 },
    stages,
  );
  expect(pick).toBeNull();
  expect(because.map(({ key }) => key)).toEqual(['line.atPace', 'line.differs', 'line.differs']);
});
