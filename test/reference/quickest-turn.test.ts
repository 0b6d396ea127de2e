// @module-tag slow
/**
 * Quickest turns and runs against an independent program (test/reference/independent/skier: direct collocation by
 * trapezoids, another interior point) [derived], and signs and orders of published measurements.
 */
import { describe, expect, test } from 'vitest';
import { quickestRun, type Rhythm, rhythm, type SetRun } from '../../core/line/index.ts';
import { evenSlope } from '../../core/run/index.ts';
import { conditionsOf, DEGREE, giant, SLALOM, slalom } from '../core/line/questions.ts';
import independent from './independent/skier-by-ipopt.json' with { type: 'json' };

type Row = (typeof independent.rhythms)[number];

const trialOf = (row: Row | (typeof independent.sets)[number]) => ({
  sidecutRadius: row.sidecutRadiusM,
  contactLength: row.contactLengthM,
  slopeDeg: row.slopeDeg,
  clearance: row.clearanceM,
  pushMost: row.mostLoadBw,
  legSpeed: row.mostLegSpeed,
  pushRate: row.mostPushRateBw,
});

const secondsOf = (row: Row, stages = 48, beginnings = 4) => {
  const question = { conditions: conditionsOf(trialOf(row)), spacing: row.distanceM, offset: row.offsetM };
  const answer = rhythm(question, { stages, beginnings });
  if (!answer.ok) throw new Error(`${answer.reason}: ${answer.limit}`);
  return answer;
};

describe('rhythms', () => {
  test.each(independent.rhythms.map((row, i) => [i + 1, row] as const))(
    'row %i within 1 % in time',
    (_, row) => {
      const { secondsPerGate } = secondsOf(row);
      // The design's own 1.358 s of the last row is a slower local optimum: only a quicker answer than 1 % over is asked.
      expect(secondsPerGate).toBeGreaterThan(0.99 * row.secondsAGate);
      expect(secondsPerGate).toBeLessThan(1.01 * row.secondsAGate);
    },
  );

  test('skis and mass swing as far as there', () => {
    const [row] = independent.rhythms;
    const { run } = secondsOf(row);
    expect(Math.max(...run.x)).toBeCloseTo(row.skisAcrossM, 2);
    expect(Math.max(...run.massX)).toBeCloseTo(row.massAcrossM, 1);
  });

  test('three meshes agree to 0.3 %', () => {
    for (const row of [independent.rhythms[0], independent.rhythms[3]]) {
      const times = [32, 48, 72].map(stages => secondsOf(row, stages, 2).secondsPerGate);
      expect(Math.max(...times) / Math.min(...times) - 1).toBeLessThan(0.003);
    }
  });
});

describe('what a tenth is made of', () => {
  // Skier.md: slalom, 56 gates on 15°: 5 cm less clearance −0.58 s, leg speed +0.1 m/s −0.52 s [derived].
  test('clearance and leg speed decide a slalom, air and friction a giant slalom', () => {
    const per = (row: Row) => {
      const trial = trialOf(row);
      const at = (change: object, skier: object = {}) => {
        const usual = conditionsOf({ ...trial, slopeDeg: row === independent.rhythms[0] ? 15 : 12 }, skier);
        const conditions = { ...usual, ...change };
        const answer = rhythm({ conditions, spacing: row.distanceM, offset: row.offsetM });
        if (!answer.ok) throw new Error(answer.limit);
        return answer.secondsPerGate;
      };
      const usual = at({});
      return {
        clearance: at({ clearance: trial.clearance - 0.05 }) - usual,
        friction: at({ friction: 0.045 }) - usual,
        air: at({}, { dragArea: 0.4 }) - usual,
      };
    };
    const slalomRow = per(independent.rhythms[0]);
    const giantRow = per(independent.rhythms[2]);
    expect(56 * slalomRow.clearance).toBeCloseTo(independent.worth[0].clearance, 1);
    expect(-slalomRow.clearance).toBeGreaterThan(10 * -slalomRow.friction);
    expect(-giantRow.air).toBeGreaterThan(3 * -giantRow.clearance);
    expect(-giantRow.friction).toBeGreaterThan(-giantRow.clearance);
  });
});

describe('sets', () => {
  const run = (
    row: (typeof independent.sets)[number],
    from: readonly SetRun[] = [],
    turned: 1 | -1 = 1,
    beginnings = 1,
  ) => {
    const poles = Array.from({ length: row.gates }, (_, i) => {
      const right = (i % 2 === 0 ? 1 : -1) * turned;
      return { x: (right * row.offsetM) / 2, y: (i + 1) * row.distanceM, turn: -right as 1 | -1 };
    });
    const answer = quickestRun(
      { conditions: conditionsOf(trialOf(row)), poles, startSpeed: row.startSpeed },
      { stages: 24, from, beginnings },
    );
    if (!answer.ok) throw new Error(`${answer.reason}: ${answer.limit}`);
    return answer;
  };
  const [giantLong, , slalomShort, slalomOther] = independent.sets;

  test('a giant slalom of ten gates within 1 % in time', { timeout: 300_000 }, () => {
    // Skier.md's 14.94 s; the independent program's best of several starts, on its coarser mesh, is 14.90 s [derived].
    expect(Math.abs(run(giantLong, [], 1, 3).seconds / 14.94 - 1)).toBeLessThan(0.01);
  });

  test('a slalom of ten gates within 1 % in time, and a neighbouring radius level to a hundredth', () => {
    const first = run(slalomShort);
    // 20 nodes an interval: 7.98 s.
    expect(Math.abs(first.seconds / 7.98 - 1)).toBeLessThan(0.01);
    const other = run(slalomOther, [first]);
    const again = run(slalomShort, [first, other]);
    expect(Math.abs(other.seconds - again.seconds)).toBeLessThan(0.01);
  });

  test('the mirrored set is run the mirrored way in the same time', () => {
    const short = { ...slalomShort, gates: 4 };
    const [one, other] = [run(short), run(short, [], -1)];
    expect(other.seconds).toBeCloseTo(one.seconds, 5);
    for (const [k, x] of one.run.x.entries()) expect(other.run.x[k]).toBeCloseTo(-x, 3);
  });
});

describe('published measurements, signs and orders', () => {
  const speed = (conditions: ReturnType<typeof conditionsOf>, spacing: number, offset: number) => {
    const answer = rhythm({ conditions, spacing, offset }, { beginnings: 3 });
    if (!answer.ok) throw new Error(answer.limit);
    return answer;
  };

  test('giant slalom: closer gates and more offset slow the turn', () => {
    // Gilgien et al., BJSM 2020 (abstract, seen): 0.5 m/s less takes 4.9–6.9 m less distance or 2.8–3.2 m more offset.
    const conditions = {
      ...conditionsOf({ ...SLALOM, sidecutRadius: 30, contactLength: 1.6, clearance: 0.5 }),
      slope: evenSlope(14 * DEGREE),
    };
    const usual = speed(conditions, 26, 7).meanSpeed;
    expect(speed(conditions, 21, 7).meanSpeed).toBeLessThan(usual);
    expect(speed(conditions, 26, 10).meanSpeed).toBeLessThan(usual);
  });

  test('a larger sidecut takes longer in a tight set and less long in a wide one', () => {
    // Kröll et al., BJSM 50 (abstract, seen): larger radius, longer turn time.
    const of = (radius: number) =>
      conditionsOf({ ...SLALOM, sidecutRadius: radius, contactLength: 1.5, slopeDeg: 14 });
    expect(speed(of(30), 10, 3.2).secondsPerGate).toBeGreaterThan(speed(of(13), 10, 3.2).secondsPerGate);
    expect(speed(of(30), 27, 7).secondsPerGate).toBeLessThan(speed(of(13), 27, 7).secondsPerGate);
  });

  // Meyer et al. 2012, quoted in Appl. Sci. 2022, 12, 902 (secondary): air takes 15 % (5–28 %) of the energy lost in a
  // giant-slalom turn. As quoted, of all that is lost: snow and air together.
  const airShare = ({ energy: { drag, friction, scrape } }: Rhythm['run']) =>
    drag / (drag + friction + scrape);

  test("the air's share of what is lost is that of a turn: a fifth in slalom", () => {
    const share = airShare(speed(slalom().conditions, 10, 3.2).run);
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.28);
  });

  test('known deviation: in giant slalom the air takes more than was measured, for the quickest turn hardly slips', () => {
    // Some 59 %. At 20 m/s the air alone takes 0.5 ρ C_dA u² = 100 N and friction μ times 1.4 body weights 55 N: only a
    // ski that skids loses to the snow what the measured racers did. Nothing is tuned to meet it.
    const { run } = speed(giant().conditions, 25, 8);
    const { scrape, friction, drag } = run.energy;
    expect(airShare(run)).toBeGreaterThan(0.28);
    expect(scrape).toBeLessThan(0.1 * (scrape + friction + drag));
  });
});
