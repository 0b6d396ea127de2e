import { expect, test } from 'vitest';
import { type Sentence, say } from '../../../core/language/index.ts';
import { type DynamicMoment, momentWords } from '../../../core/run/index.ts';

const DEGREE = Math.PI / 180;
const G = 9.81;

/** A steady left or right turn at the fall line on the flat: no swing, no work of the leg. */
function steady(side: 1 | -1, speed: number, radius: number, edge: number, slip = 0): DynamicMoment {
  const curvature = side / radius;
  const sideways = speed * speed * curvature;
  const lean = Math.atan2(sideways, G);
  return {
    row: 0,
    t: 1,
    slope: 0,
    heading: 0,
    edge: side * edge,
    speed,
    skiSpeed: speed,
    curvature,
    ownCurvature: curvature,
    mismatch: 0,
    sideways,
    intoSnow: G,
    leg: 0.9,
    legSpeed: 0,
    legAcceleration: 0,
    leanRate: 0,
    leanAcceleration: 0,
    lean,
    leanFromBalance: lean,
    load: 75 * Math.hypot(sideways, G),
    loadFromBalance: 75 * Math.hypot(sideways, G),
    angulation: edge - side * lean,
    hold: edge - side * lean,
    slip,
  };
}

const inWords = (sentence: Sentence) => say(sentence).replaceAll('\u00a0', ' ');

test.each([1, -1] as const)('a turn that carves says at which speed and radius grip ends (side %d)', side => {
  const words = momentWords(steady(side, 7, 9, 50 * DEGREE), 75);
  expect(inWords(words.verdict)).toMatch(
    /it carves it\. The force leans 29\.0°, with 21\.0° of grip to spare/,
  );
  // v² = g R tan θ and R = v²/(g tan θ), 50° of edge and no bevel.
  const speed = Math.sqrt(G * 9 * Math.tan(50 * DEGREE)) * 3.6;
  const radius = 49 / (G * Math.tan(50 * DEGREE));
  expect(words.changes.map(inWords)).toEqual([
    `On this arc grip ends here at ${speed.toFixed(0)} km/h; at this speed, at a radius of ${radius.toFixed(1)} m.`,
  ]);
});

test('a turn that slides says how much slower it would grip, and on which radius', () => {
  const moment = steady(1, 12, 9, 50 * DEGREE, 3 * DEGREE);
  const words = momentWords({ ...moment, hold: 50 * DEGREE - moment.lean }, 75);
  expect(inWords(words.verdict)).toMatch(/the edge lets go/);
  const speed = Math.sqrt(G * 9 * Math.tan(50 * DEGREE)) * 3.6;
  expect(inWords(words.changes[0]!)).toContain(`grips here below ${speed.toFixed(0)} km/h`);
  expect(inWords(words.changes[1]!)).toContain(
    `carries ${(144 / (G * Math.tan(50 * DEGREE))).toFixed(1)} m here`,
  );
});

test('where the slope alone pulls harder than the edge carries, no speed is named', () => {
  const moment = { ...steady(1, 5, 9, 20 * DEGREE, 3 * DEGREE), slope: 30 * DEGREE, heading: 60 * DEGREE };
  expect(momentWords(moment, 75).changes).toEqual([{ key: 'run.slopePullsMore' }]);
});
