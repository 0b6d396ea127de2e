import fc from 'fast-check';
import * as mathjs from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  bankedTurns,
  cosineTurn,
  drawnEdges,
  evenSlope,
  heldEdge,
  linkedTurns,
  Phase,
  type RunConditions,
  type RunOptions,
  runDown,
  straightDistance,
  straightSpeed,
  type Track,
  terminalSpeed,
} from '../../../core/run/index.ts';

const RAD = Math.PI / 180;

/** Exported by mathjs but missing from its type declarations. */
const { solveODE } = mathjs as unknown as {
  solveODE(
    f: (t: number, y: number[]) => number[],
    span: number[],
    start: number[],
    options: { method: string; tol: number },
  ): { y: number[][] };
};

const BASE: RunConditions = {
  turn: cosineTurn(13),
  profile: evenSlope(14 * RAD),
  programme: linkedTurns({ peakEdge: 60 * RAD, period: 3, turns: 8 }),
  mass: 75,
  friction: 0.03,
  dragArea: 0.45,
  airDensity: 1.1,
  startSpeed: 7,
};

const FREE = { friction: 0, dragArea: 0 };

function run(change: Partial<RunConditions> = {}, options: RunOptions = {}): Track {
  return runDown({ ...BASE, ...change }, options);
}

const last = (a: ArrayLike<number>) => a[a.length - 1];

describe('on level ground', () => {
  it('a held edge draws a circle of the carved radius at constant speed', () => {
    const edge = 50 * RAD;
    const track = run(
      { ...FREE, profile: evenSlope(0), programme: heldEdge(edge, 12), startSpeed: 8 },
      { outputStep: 0.05 },
    );
    const radius = 13 * Math.cos(edge);
    for (let i = 0; i < track.t.length; i++) {
      // A right turn from heading 0: the centre lies at x = R.
      expect(Math.hypot(track.x[i] - radius, track.y[i])).toBeCloseTo(radius, 5);
      expect(track.speed[i]).toBeCloseTo(8, 8);
      expect(track.heading[i]).toBeCloseTo((8 * track.t[i]) / radius, 6);
    }
    expect(track.summary.skidSeconds).toBe(0);
  });
});

describe('energy', () => {
  it('without friction and drag the speed follows the drop alone while the edge holds', () => {
    const track = run(
      {
        ...FREE,
        profile: evenSlope(8 * RAD),
        programme: linkedTurns({ peakEdge: 65 * RAD, period: 3, turns: 2 }),
        startSpeed: 4,
      },
      { tolerance: 1e-10 },
    );
    expect(track.summary.skidSeconds).toBe(0);
    for (let i = 0; i < track.t.length; i++) {
      expect(track.speed[i] ** 2).toBeCloseTo(16 + 2 * 9.81 * track.drop[i], 6);
    }
  });

  it('the book closes to 1e-6 through skids, changes of edge and any conditions', () => {
    fc.assert(
      fc.property(
        fc.record({
          slope: fc.double({ min: 3, max: 35, noNaN: true }),
          peak: fc.double({ min: 15, max: 75, noNaN: true }),
          period: fc.double({ min: 1, max: 6, noNaN: true }),
          speed: fc.double({ min: 2, max: 25, noNaN: true }),
          sidecut: fc.double({ min: 8, max: 40, noNaN: true }),
          shape: fc.constantFrom<'sine' | 'trapezoid'>('sine', 'trapezoid'),
          per: fc.constantFrom<'time' | 'distance'>('time', 'distance'),
        }),
        c => {
          const track = run(
            {
              turn: cosineTurn(c.sidecut),
              profile: evenSlope(c.slope * RAD),
              programme: linkedTurns({
                peakEdge: c.peak * RAD,
                period: c.per === 'time' ? c.period : 12 * c.period,
                turns: 6,
                shape: c.shape,
                per: c.per,
              }),
              startSpeed: c.speed,
              baseBevel: 0.5 * RAD,
            },
            { outputStep: 0.05 },
          );
          expect(track.summary.energyErrorRatio).toBeLessThan(1e-6);
          expect(last(track.energy.skid)).toBeGreaterThanOrEqual(0);
          for (const v of track.speed) expect(Number.isFinite(v)).toBe(true);
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  });
});

describe('the straight run', () => {
  it('agrees with the closed form in speed and distance', () => {
    const c = { mass: 80, friction: 0.05, dragArea: 0.4, airDensity: 1 };
    const closed = { ...c, slope: 20 * RAD };
    const track = run(
      { ...c, profile: evenSlope(20 * RAD), programme: heldEdge(0, 60), startSpeed: 2 },
      { outputStep: 0.5, tolerance: 1e-10 },
    );
    for (let i = 0; i < track.t.length; i++) {
      expect(track.speed[i]).toBeCloseTo(straightSpeed(closed, 2, track.t[i]), 7);
      expect(track.distance[i]).toBeCloseTo(straightDistance(closed, 2, track.t[i]), 5);
      expect(track.phase[i]).toBe(Phase.Flat);
    }
    expect(Math.abs(track.summary.endSpeed - terminalSpeed(closed))).toBeLessThan(0.01);
  });

  it('comes to a stop where friction outweighs the slope', () => {
    const track = run({ friction: 0.2, profile: evenSlope(5 * RAD), programme: heldEdge(0, 60) });
    expect(track.summary.end).toBe('stopped');
  });
});

describe('sides', () => {
  it('a positive edge turns right, and the weight helps before the fall line and adds after it', () => {
    const held = { programme: heldEdge(50 * RAD, 0.02), startSpeed: 7, ...FREE };
    const before = run({ ...held, startHeading: -45 * RAD });
    const after = run({ ...held, startHeading: 45 * RAD });
    expect(last(before.heading)).toBeGreaterThan(before.heading[0]);
    expect(before.lean[0]).toBeLessThan(after.lean[0]);
    expect(before.hold[0]).toBeGreaterThan(after.hold[0]);
    const normal = 75 * 9.81 * Math.cos(14 * RAD);
    const centre = (75 * 49) / (13 * Math.cos(50 * RAD));
    const pull = 75 * 9.81 * Math.sin(14 * RAD) * Math.SQRT1_2;
    expect(after.lean[0]).toBeCloseTo(Math.atan2(centre + pull, normal), 9);
    expect(before.lean[0]).toBeCloseTo(Math.atan2(centre - pull, normal), 9);
  });

  it('left first is the mirror of right first', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 25, noNaN: true }),
        fc.double({ min: 20, max: 70, noNaN: true }),
        fc.boolean(),
        (slope, peak, banked) => {
          const track = (first: 'right' | 'left') =>
            run(
              {
                profile: evenSlope((banked ? slope / 2 : slope) * RAD),
                programme: banked
                  ? bankedTurns(peak * RAD, 6, first)
                  : linkedTurns({ peakEdge: peak * RAD, period: 2.5, turns: 6, first }),
              },
              { outputStep: 0.1, maxSeconds: 60 },
            );
          const right = track('right');
          const left = track('left');
          expect(left.t.length).toBe(right.t.length);
          for (let i = 0; i < right.t.length; i++) {
            for (const odd of ['x', 'heading', 'drift', 'edge', 'lean'] as const) {
              expect(left[odd][i] + right[odd][i]).toBeCloseTo(0, 9);
            }
            for (const even of ['y', 'speed', 'load', 'hold', 'drop'] as const) {
              expect(left[even][i]).toBeCloseTo(right[even][i], 6);
            }
          }
        },
      ),
      { numRuns: 16, seed: 3 },
    );
  });
});

describe('another integrator', () => {
  it('mathjs solveODE follows the same track where nothing slips', () => {
    const held = { programme: heldEdge(55 * RAD, 1.2), startSpeed: 6, startHeading: -50 * RAD };
    const track = run(held, { outputStep: 0.05, tolerance: 1e-10 });
    expect(track.summary.skidSeconds).toBe(0);
    const g = 9.81;
    const radius = 13 * Math.cos(55 * RAD);
    const motion = (_t: number, [, , chi, v]: number[]): number[] => {
      const normal = 75 * g * Math.cos(14 * RAD);
      const sideways = (75 * v * v) / radius + 75 * g * Math.sin(14 * RAD) * Math.sin(chi);
      return [
        v * Math.sin(chi),
        v * Math.cos(chi),
        v / radius,
        g * Math.sin(14 * RAD) * Math.cos(chi) -
          (0.03 * Math.hypot(normal, sideways)) / 75 -
          (1.1 * 0.45 * v * v) / 150,
      ];
    };
    const solution = solveODE(motion, [0, 1.2], [0, 0, -50 * RAD, 6], { method: 'RK45', tol: 1e-11 });
    const [x, y, chi, v] = solution.y[solution.y.length - 1];
    expect(last(track.x)).toBeCloseTo(x, 7);
    expect(last(track.y)).toBeCloseTo(y, 7);
    expect(last(track.heading)).toBeCloseTo(chi, 7);
    expect(last(track.speed)).toBeCloseTo(v, 7);
  });

  it('a tighter tolerance closes in on one track', () => {
    const at = (tolerance: number) => run({}, { outputStep: 1, tolerance });
    const fine = at(1e-12);
    const miss = (tolerance: number) => {
      const track = at(tolerance);
      return Math.hypot(last(track.x) - last(fine.x), last(track.y) - last(fine.y));
    };
    expect(miss(1e-4)).toBeLessThan(0.05);
    expect(miss(1e-7)).toBeLessThan(miss(1e-4));
    expect(miss(1e-9)).toBeLessThan(1e-5);
  });
});

describe('hold and skid', () => {
  it('linked turns well inside the balance never skid, and hold does not fail at the change of edge', () => {
    const track = run({
      profile: evenSlope(6 * RAD),
      programme: linkedTurns({ peakEdge: 60 * RAD, period: 2.6, turns: 8 }),
      dragArea: 0.66,
      friction: 0.06,
      startSpeed: 6,
    });
    expect(track.summary.skidSeconds).toBe(0);
    expect(track.summary.minHold).toBeGreaterThan(0);
    expect(track.summary.turns).toBe(8);
    for (const hold of track.hold) expect(hold).toBeGreaterThan(-1e-9);
  });

  it('too fast for the edge skids: the skis come across, the track opens and the snow brakes', () => {
    const fast = { programme: heldEdge(25 * RAD, 2), startSpeed: 15, startHeading: -40 * RAD };
    const track = run(fast);
    const middle = track.t.findIndex(t => t >= 1);
    expect(track.phase[middle]).toBe(Phase.Slipping);
    expect(track.hold[middle]).toBeLessThan(0);
    expect(track.drift[middle]).toBeGreaterThan(0);
    expect(last(track.energy.skid)).toBeGreaterThan(0);
    expect(track.summary.skidSeconds).toBeGreaterThan(1);
    const turned = last(track.heading) - track.heading[0];
    expect(turned).toBeLessThan((0.8 * track.summary.distance) / (13 * Math.cos(25 * RAD)));
    expect(track.events[0].name).toBe('hold lost');
  });

  it('hold is found again where more edge is given', () => {
    const track = run({
      programme: drawnEdges([0, 0.4, 0.8, 2], [30 * RAD, 30 * RAD, 68 * RAD, 68 * RAD]),
      startSpeed: 9,
      startHeading: -60 * RAD,
    });
    const names = track.events.map(e => e.name);
    expect(names).toContain('hold lost');
    expect(names.indexOf('hold found')).toBeGreaterThan(names.indexOf('hold lost'));
    const after = track.t.findIndex(
      t => t > (track.events.find(e => e.name === 'hold found')?.t ?? 9) + 0.005,
    );
    expect(track.phase[after]).toBe(Phase.Holding);
  });

  it('a flat ski across the slope slides with its weight and turns towards the fall line by itself', () => {
    const track = run({ ...FREE, programme: heldEdge(0, 1), startSpeed: 5, startHeading: 70 * RAD });
    // Nothing but the weight acts: a free fall along the slope.
    const a = 9.81 * Math.sin(14 * RAD);
    expect(last(track.x)).toBeCloseTo(5 * Math.sin(70 * RAD), 6);
    expect(last(track.y)).toBeCloseTo(5 * Math.cos(70 * RAD) + 0.5 * a, 6);
  });
});

describe('events and ends', () => {
  it('a watch is located and can end the run', () => {
    const track = run({}, { watch: [{ name: 'line', value: (_t, s) => s.y - 20, stop: true }] });
    expect(track.summary.end).toBe('watch');
    expect(track.events.at(-1)?.name).toBe('line');
    expect(last(track.y)).toBeCloseTo(20, 6);
  });

  it('a watch sees each crossing once, either way or one way', () => {
    const across = { name: 'axis', value: (_t: number, s: { heading: number }) => s.heading };
    const both = run({}, { watch: [across] }).events.filter(e => e.name === 'axis');
    const right = run({}, { watch: [{ ...across, direction: 1 }] }).events.filter(e => e.name === 'axis');
    expect(both).toHaveLength(8);
    expect(right).toHaveLength(4);
    for (const e of both) expect(e.heading).toBeCloseTo(0, 7);
  });

  it('banked turns change side on the traverse', () => {
    const track = run({ profile: evenSlope(8 * RAD), programme: bankedTurns(50 * RAD, 5) });
    expect(track.summary.turns).toBe(5);
    const traverses = track.events.filter(e => e.name === 'traverse');
    expect(traverses).toHaveLength(5);
    for (const [i, e] of traverses.entries()) {
      expect(e.heading).toBeCloseTo((i % 2 === 0 ? 50 : -50) * RAD, 7);
    }
  });

  it('rows come at the step that was asked, and the end is a row', () => {
    const track = run({}, { outputStep: 0.25 });
    for (let i = 0; i < track.t.length; i++) expect(track.t[i]).toBeCloseTo(0.25 * i, 9);
    expect(last(track.t)).toBeCloseTo(12, 9);
    expect(track.phase.length).toBe(track.t.length);
  });

  it('names a condition out of range', () => {
    expect(() => run({ mass: -3 })).toThrow(/mass: -3 kg found; 10 to 500 kg is accepted/);
    expect(() => run({ friction: Number.NaN })).toThrow(/friction: NaN/);
    expect(() => run({}, { outputStep: 0 })).toThrow(/outputStep/);
  });
});
