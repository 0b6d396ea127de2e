import { describe, expect, it } from 'vitest';
import {
  fitRhythmicSet,
  gateReport,
  lineThroughGates,
  rankPairs,
  rhythmicSet,
  setRadius,
  setTurnAngle,
} from '../../core/course/index.ts';
import { say } from '../../core/language/index.ts';
import { cosineTurn } from '../../core/run/index.ts';

const rad = Math.PI / 180;
const deg = 180 / Math.PI;

/** Rhythmic set in closed form: plane geometry [derived]. */
describe('the rhythmic set', () => {
  it('10 m by 3 m asks for 109/12 = 9.0833 m and turns 33.398° either side', () => {
    expect(setRadius(10, 3)).toBeCloseTo(109 / 12, 12);
    expect(setTurnAngle(10, 3) * deg).toBeCloseTo(33.398, 3);
  });

  it('asks 45.68° of a 13 m ski and 72.37° of a 30 m ski', () => {
    const short = fitRhythmicSet(10, 3, 13);
    const long = fitRhythmicSet(10, 3, 30);
    expect(short.kind).toBe('arcs');
    expect(short.edgeAngle * deg).toBeCloseTo(45.675, 2);
    expect(long.edgeAngle * deg).toBeCloseTo(72.374, 2);
  });

  it('26 m by 7 m (25.89 m) fits a 30 m ski at 30.3°; a 13 m ski needs traverses', () => {
    expect(setRadius(26, 7)).toBeCloseTo(725 / 28, 12);
    expect(fitRhythmicSet(26, 7, 30).edgeAngle * deg).toBeCloseTo(30.334, 3);
    const short = fitRhythmicSet(26, 7, 13);
    expect(short.kind).toBe('arcs and traverses');
    if (short.kind !== 'arcs and traverses') return;
    // Walking the two arcs and the traverse must arrive at the next gate.
    const across =
      2 * short.radius * (1 - Math.cos(short.turnAngle)) + short.traverse * Math.sin(short.turnAngle);
    const down = 2 * short.radius * Math.sin(short.turnAngle) + short.traverse * Math.cos(short.turnAngle);
    expect(across).toBeCloseTo(7, 10);
    expect(down).toBeCloseTo(26, 10);
  });

  it('the drawn line tends to the closed form as clearance and clothoids vanish', () => {
    const gates = rhythmicSet(21, 10, 3);
    const line = lineThroughGates(gates, { clearance: 1e-6, arcShare: 0.45 });
    const at = line.gateSamples[10];
    expect(1 / Math.abs(line.curvature[at])).toBeCloseTo(setRadius(10, 3), 1);
    expect(line.heading[at]).toBeCloseTo(0, 6);
  });
});

/** The choice any coach would make [practice]; the numbers are this model's. */
describe('a 13 m and a 30 m ski', () => {
  const pairs = [13, 30].map(radius => ({
    name: `${radius} m`,
    turn: cosineTurn(radius),
    baseBevel: 0.5 * rad,
  }));

  it('on a 10 m slalom rhythm at 9 m/s the 13 m ski is picked', () => {
    const conditions = { slope: 18 * rad, startSpeed: 9, holdSpeed: true };
    const { pick, pairs: ranked, sure, because } = rankPairs(pairs, rhythmicSet(40, 10, 3), conditions);
    expect(pick).toBe('13 m');
    expect(sure).toBe('clear');
    // Clearance and clothoids tighten the 9.08 m of the closed form to 6.88 m: 58.0° against 76.7°.
    const short = ranked[0].report.gates[15];
    const long = ranked[1].report.gates[15];
    expect(short.neededRadius).toBeCloseTo(6.88, 2);
    expect(short.neededEdge! * deg).toBeCloseTo(58, 0);
    expect(long.neededEdge! * deg).toBeCloseTo(76.7, 0);
    expect(ranked[0].gatesDrifted).toBe(0);
    expect(ranked[1].gatesDrifted).toBe(40);
    expect(because.map(reason => say(reason)).join(' ')).toMatch(/beyond 65\s?°/);
  });

  it('on a 26 m giant slalom rhythm the 30 m ski is picked, run free from 15 m/s', () => {
    const conditions = { slope: 15 * rad, startSpeed: 15 };
    const { pick, pairs: ranked, sure } = rankPairs(pairs, rhythmicSet(30, 26, 7), conditions);
    expect(pick).toBe('30 m');
    expect(sure).toBe('clear');
    expect(ranked[1].cost - ranked[0].cost).toBeGreaterThan(5);
    // A 13 m ski is past its ceiling √(g R_sc) = 11.3 m/s and drifts; its edge is not what is short.
    expect(ranked[1].gatesDrifted).toBeGreaterThan(25);
    expect(ranked[1].neededEdge).toBe(0);
    expect(ranked[0].report.averageSpeed).toBeGreaterThan(15);
  });
});

/** Straight run: m 80 kg, slope 20°, friction 0.05, air 1.0, drag area 0.40: 34.03 m/s [derived]. */
it('on gates in a straight line the run reaches the terminal speed of the straight run', () => {
  const gates = Array.from({ length: 80 }, (_, i) => ({
    label: String(i + 1),
    x: 0,
    y: 30 * (i + 1),
    colour: null,
    turn: (i % 2 === 0 ? 1 : -1) as 1 | -1,
  }));
  const line = lineThroughGates(gates, { clearance: 1e-4 });
  const pair = { name: '45 m', turn: cosineTurn(45), baseBevel: 0 };
  const report = gateReport(pair, line, gates, {
    slope: 20 * rad,
    mass: 80,
    friction: 0.05,
    airDensity: 1,
    dragArea: 0.4,
    startSpeed: 20,
  });
  expect(report.endSpeed).toBeCloseTo(34.03, 1);
});
