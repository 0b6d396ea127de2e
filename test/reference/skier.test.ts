/**
 * A skier on a leg. Trial rows: an independent program (direct collocation by trapezoids of 0.02 s, a general
 * interior-point solver) [derived; the numbers of its answers]. Closed forms: derived from the equations of
 * core/skier on paper. None of these numbers was made with this solver.
 */
import { describe, expect, it } from 'vitest';
import {
  cosineTurn,
  dynamicMoment,
  evenSlope,
  heldEdge,
  linkedTurns,
  type RunConditions,
  solveRun,
  straightDistance,
  straightSpeed,
  type Track,
} from '../../core/run/index.ts';
import independent from './independent/skier-by-ipopt.json' with { type: 'json' };
import { near, RAD, SKIER, solved } from './skier-cases.ts';

const G = 9.81;

function linked(
  [radius, edge, period, slope, kmh]: readonly number[],
  rest: Partial<RunConditions> & { turns?: number; first?: 'right' | 'left' } = {},
): RunConditions {
  const { turns = 4, first = 'right', ...others } = rest;
  return {
    ...SKIER,
    turn: cosineTurn(radius),
    profile: evenSlope(slope * RAD),
    programme: linkedTurns({ peakEdge: edge * RAD, period, turns, first }),
    startSpeed: kmh / 3.6,
    startHeading: -20 * RAD,
    ...others,
  };
}

describe('runs of an independent program [derived], within 1 %', () => {
  for (const row of independent.runs) {
    const leg = row.startLegSpeed === 'free' ? 'a leg that drops in' : 'a still leg';
    it(`R ${row.sidecutRadiusM} m, ${row.peakEdgeDeg}°, ${row.periodS} s, ${row.slopeDeg}°, ${row.startKmh} km/h, ${leg}`, () => {
      const given = [row.sidecutRadiusM, row.peakEdgeDeg, row.periodS, row.slopeDeg, row.startKmh];
      const { turns, contactLengthM: contactLength } = row;
      const dropIn = row.startLegSpeed === 'free';
      const { summary } = solved(linked(given, { turns, contactLength }), { dropIn }).track;
      near(3.6 * summary.endSpeed, row.endKmh, 0.01, 0);
      near(summary.maxLoadBodyWeights, row.greatestLoadBw, 0.01, 0);
      near(summary.maxLean / RAD, row.greatestLeanDeg, 0.01, 0);
      near(summary.maxMismatch, row.greatestMismatchPerM, 0.01, 0.0015);
      near(summary.minLeg, row.shortestLegM, 0.01, 0);
      expect(summary.energyErrorRatio).toBeLessThan(1e-6);
    });
  }
});

describe('closed forms [derived]', () => {
  it('a steady circle leans as tan ψ = v²κ(1 − κ ℓ sin ψ)/g', () => {
    const edge = 40 * RAD;
    const { track } = solved({
      ...SKIER,
      friction: 0,
      dragArea: 0,
      scrape: 0,
      turn: cosineTurn(13),
      profile: evenSlope(0),
      programme: heldEdge(edge, 4),
      startSpeed: 8,
    });
    const row = track.t.length >> 1;
    const curvature = 1 / (13 * Math.cos(edge));
    const v = track.skiSpeed[row];
    let lean = 0.5;
    for (let i = 0; i < 200; i++) {
      lean = Math.atan((v * v * curvature * (1 - curvature * track.leg[row] * Math.sin(lean))) / G);
    }
    expect(track.radius[row]).toBeCloseTo(1 / curvature, 4);
    expect(track.lean[row]).toBeCloseTo(lean, 4);
    expect(track.loadBodyWeights[row]).toBeCloseTo(1 / Math.cos(lean), 4);
    // Sides of the circle: the skis on R, the mass nearer the centre by p.
    expect(track.speed[row] / v).toBeCloseTo(1 - curvature * track.leg[row] * Math.sin(lean), 6);
  });

  it('in small swings on the flat the mass moves 1/(1 + ω²ℓ/g) of what the skis do', () => {
    for (const period of [1.6, 2.4]) {
      const omega = (2 * Math.PI) / period;
      const { track } = solved({
        ...SKIER,
        friction: 0,
        dragArea: 0,
        scrape: 0,
        turn: cosineTurn(20),
        profile: evenSlope(0),
        programme: linkedTurns({ peakEdge: 1.5 * RAD, period, turns: 10 }),
        startSpeed: 5,
        startHeading: 0,
      });
      // Amplitude at the period of the turns over the four turns in the middle, any drift taken out.
      const amplitude = (column: Float64Array) => {
        const rows = [...column.keys()].filter(
          i => track.t[i] >= (3 * period) / 2 && track.t[i] < (7 * period) / 2,
        );
        const n = rows.length;
        const level = rows.reduce((sum, i) => sum + column[i], 0) / n;
        const tilt = (column[rows[n - 1]] - column[rows[0]]) / (track.t[rows[n - 1]] - track.t[rows[0]]);
        let s = 0;
        let c = 0;
        for (const i of rows) {
          const value = column[i] - level - tilt * (track.t[i] - track.t[rows[n >> 1]]);
          s += value * Math.sin(omega * track.t[i]);
          c += value * Math.cos(omega * track.t[i]);
        }
        return Math.hypot(s, c) / n;
      };
      const ratio = amplitude(track.massX) / amplitude(track.x);
      expect(ratio * (1 + (omega * omega * 0.9) / G)).toBeCloseTo(1, 1.5);
    }
  });

  it('with a short leg the lean is that of a point on the skis', () => {
    const turn = cosineTurn(13);
    const { track } = solved(
      linked([13, 50, 3, 10, 25], { legShortest: 0.1, legLongest: 0.14, friction: 0.03 }),
      {
        step: 0.01,
      },
    );
    let worst = 0;
    for (let i = 0; i < track.t.length; i++) {
      if (Math.abs(track.edge[i]) < 25 * RAD || track.slip[i] > 0.001) continue;
      const curvature = Math.sign(track.edge[i]) / turn.radius(Math.abs(track.edge[i]), 1000);
      const asks = track.speed[i] ** 2 * curvature + G * Math.sin(10 * RAD) * Math.sin(track.heading[i]);
      worst = Math.max(worst, Math.abs(track.lean[i] - Math.atan(asks / (G * Math.cos(10 * RAD)))));
    }
    expect(worst).toBeGreaterThan(0);
    // What is left goes with the leg: ω²ℓ/g of the lean, by the small swings above.
    const left = (((2 * Math.PI) / 3) ** 2 * 0.14 * track.summary.maxLean) / G;
    expect(worst).toBeLessThan(1.5 * left);
  });

  it('on skis that lie flat the run is the straight run in closed form', () => {
    const straight = { mass: 75, slope: 12 * RAD, friction: 0.03, dragArea: 0.45, airDensity: 1.1 };
    const { track } = solved({
      ...SKIER,
      ...straight,
      scrape: 0,
      turn: cosineTurn(13),
      profile: evenSlope(straight.slope),
      programme: heldEdge(0, 10),
      startSpeed: 5,
    });
    for (let i = 0; i < track.t.length; i += 50) {
      expect(track.speed[i]).toBeCloseTo(straightSpeed(straight, 5, track.t[i]), 3);
      expect(track.distance[i]).toBeCloseTo(straightDistance(straight, 5, track.t[i]), 2);
      expect(track.x[i]).toBeCloseTo(0, 6);
    }
  });

  it('without drag the mass of the skier does not matter', () => {
    const of = (mass: number) => solved(linked([13, 55, 2.4, 12, 25], { mass, dragArea: 0 })).track;
    const light = of(50);
    const heavy = of(110);
    for (let i = 0; i < light.t.length; i += 20) {
      expect(heavy.speed[i]).toBeCloseTo(light.speed[i], 6);
      expect(heavy.lean[i]).toBeCloseTo(light.lean[i], 5);
    }
  });
});

describe('forces', () => {
  const { track } = solved(linked([12.2, 60, 1.6, 19, 39.6]));
  const alpha = 19 * RAD;

  /** Second differences of the mass's place, less gravity: the force a unit mass, right, down and off the slope. */
  function forceAt(k: Track, i: number) {
    const h = k.t[i + 1] - k.t[i];
    const second = (c: (j: number) => number) => (c(i + 1) - 2 * c(i) + c(i - 1)) / (h * h);
    return {
      x: second(j => k.massX[j]),
      y: second(j => k.massY[j]) - G * Math.sin(alpha),
      z: second(j => k.leg[j] * Math.cos(k.lean[j])) + G * Math.cos(alpha),
    };
  }

  it('of the samples of the mass alone are the load reported, in the direction of the lean', () => {
    let tested = 0;
    for (let i = 2; i < track.t.length - 2; i++) {
      const f = forceAt(track, i);
      const chi = track.heading[i];
      // Across the skis' path, to its right.
      const sideways = f.x * Math.cos(chi) - f.y * Math.sin(chi);
      const load = track.load[i] / 75;
      expect(Math.abs(sideways)).toBeLessThan(load * Math.abs(Math.sin(track.lean[i])) + 0.05 * load + 0.3);
      if (track.loadBodyWeights[i] < 0.5) continue;
      expect(Math.abs(Math.atan2(sideways, f.z) - track.lean[i])).toBeLessThan(3 * RAD);
      tested++;
    }
    expect(tested).toBeGreaterThan(200);
  });

  it('the balance of each row gives the lean and the load that were solved', () => {
    for (let i = 2; i < track.t.length - 2; i += 7) {
      const m = dynamicMoment(track, i, { profile: evenSlope(alpha), mass: 75 });
      // A light leg leans as its sharpest changes will have it.
      if (track.loadBodyWeights[i] > 0.5) {
        expect(Math.abs(m.leanFromBalance - m.lean)).toBeLessThan(2.5 * RAD);
      }
      expect(Math.abs(m.loadFromBalance - m.load) / (75 * G)).toBeLessThan(0.09);
    }
  });
});

describe('the answer does not hang on how it was found', () => {
  it('a mirrored start gives the mirrored run', () => {
    const given = [12.2, 55, 2.4, 12, 25];
    const right = solved(linked(given)).track;
    const left = solved(linked(given, { first: 'left', startHeading: 20 * RAD })).track;
    for (let i = 0; i < right.t.length; i += 5) {
      expect(left.x[i]).toBeCloseTo(-right.x[i], 6);
      expect(left.lean[i]).toBeCloseTo(-right.lean[i], 6);
      expect(left.load[i]).toBeCloseTo(right.load[i], 3);
      expect(left.speed[i]).toBeCloseTo(right.speed[i], 6);
    }
  });

  it('three meshes agree to 0.3 %', { timeout: 240_000 }, () => {
    for (const given of [
      [12.2, 55, 2.4, 12, 25],
      [30, 55, 3, 16, 61.2],
    ]) {
      const runs = [0.02, 0.0133, 0.01].map(step => solved(linked(given), { step }).track.summary);
      for (const read of [
        (s: Track['summary']) => s.endSpeed,
        (s: Track['summary']) => s.distance,
        (s: Track['summary']) => s.drop,
        (s: Track['summary']) => s.maxLean,
      ]) {
        const values = runs.map(read);
        expect(Math.max(...values) / Math.min(...values) - 1).toBeLessThan(0.003);
      }
    }
  });

  it('a neighbour leads to the run that is found from nothing, in fewer steps', () => {
    const near = solved(linked([12.2, 55, 2.4, 12, 25]));
    const cold = solved(linked([12.2, 56, 2.4, 12, 25]));
    const warm = solved(linked([12.2, 56, 2.4, 12, 25]), {}, near);
    expect(warm.objective / cold.objective).toBeCloseTo(1, 3);
    expect(warm.iterations).toBeLessThan(cold.iterations);
  });
});

describe('a draft', () => {
  it('says that it is one and comes within a few per cent of the run', () => {
    const given = [12.2, 60, 1.6, 19, 39.6];
    const run = solved(linked(given));
    const draft = solved(linked(given), { draft: true });
    expect([run.draft, draft.draft]).toEqual([false, true]);
    expect(run.defect).toBeLessThan(1e-6);
    expect(draft.iterations).toBeLessThan(run.iterations);
    near(draft.track.summary.endSpeed, run.track.summary.endSpeed, 0.01, 0);
    near(draft.track.summary.maxLean, run.track.summary.maxLean, 0.02, 0);
    near(draft.track.summary.maxLoadBodyWeights, run.track.summary.maxLoadBodyWeights, 0.05, 0);
    const other = solved(linked([12.2, 61, 1.6, 19, 39.6]), { draft: true }, draft);
    const wanted = solved(linked([12.2, 61, 1.6, 19, 39.6]), {}, run).track.summary;
    near(other.track.summary.maxLean, wanted.maxLean, 0.02, 0);
  });
});

describe('a grid of runs', () => {
  /** Each is solved, or refused with what cannot be kept. */
  it('10 to 75° of edge, 3 to 30 m/s, 2 to 35° of slope', () => {
    let seed = 20;
    const random = () => {
      seed = (seed * 1664525 + 1013904223) % 4294967296;
      return seed / 4294967296;
    };
    let found = 0;
    const count = 24;
    for (let i = 0; i < count; i++) {
      const given = [
        [11, 13, 18, 24, 30][Math.floor(5 * random())],
        10 + 65 * random(),
        1.2 + 3 * random(),
        2 + 33 * random(),
        3.6 * (3 + 27 * random()),
      ];
      const run = solveRun(linked(given, { baseBevel: 0.5 * RAD }), { outputStep: 0.05 });
      if (run.ok) {
        found++;
        expect(run.track.summary.energyErrorRatio).toBeLessThan(1e-6);
        for (const speed of run.track.speed) expect(speed).toBeGreaterThan(0);
      } else {
        expect(run.limit).not.toBe('');
      }
    }
    expect(found).toBeGreaterThanOrEqual(count - 1);
  });
});
