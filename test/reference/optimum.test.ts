/**
 * The chain solver against optima that are known.
 * W. Hock & K. Schittkowski, Test Examples for Nonlinear Programming Codes, Springer 1981: problems, starts and
 * optima from memory; those marked "derived" follow in closed form. Each is set as a chain of one stage whose
 * states do not change; equations are states that begin and end at 0.
 */
import { describe, expect, test } from 'vitest';
import {
  brent,
  type ChainAnswer,
  type ChainFailure,
  solveChain,
  Tape,
  type Term,
  type TwoArgumentFunction,
} from '../../core/numeric/index.ts';
import { chainOf, gentlestMove, shortestDash } from '../core/numeric/chain-examples.ts';

interface Program {
  readonly name: string;
  readonly start: readonly number[];
  readonly objective: (t: Tape, x: readonly Term[]) => Term;
  readonly equations?: (t: Tape, x: readonly Term[]) => readonly Term[];
  /** Not negative. */
  readonly limits?: (t: Tape, x: readonly Term[]) => readonly Term[];
  readonly bounds?: readonly (readonly [i: number, low: number, high: number])[];
  readonly least: number;
  readonly at?: readonly number[];
}

const SQRT3 = Math.sqrt(3);
const every = (count: number, low: number, high: number) =>
  Array.from({ length: count }, (_, i) => [i, low, high] as const);

/** Σ factor · product, as the book writes its formulas: [factor, places of the variables, from 1…]. */
function sum(t: Tape, x: readonly Term[], ...terms: readonly (readonly [number, ...number[]])[]): Term {
  return terms
    .map(([factor, ...places]) => {
      const product = places.map(i => x[i - 1]).reduce((a, b) => t.multiply(a, b), t.constant(1));
      return t.scale(product, factor);
    })
    .reduce((a, b) => t.add(a, b));
}

/** 100 (x₂ − x₁²)² + (1 − x₁)² */
const banana = (t: Tape, x: readonly Term[]) =>
  t.add(t.scale(t.square(sum(t, x, [1, 2], [-1, 1, 1])), 100), t.square(sum(t, x, [1], [-1, 1])));

const logarithm: TwoArgumentFunction = (a, _, out) => {
  out.fill(0);
  out[0] = Math.log(a);
  out[1] = 1 / a;
  out[3] = -1 / a ** 2;
};

const PROGRAMS: readonly Program[] = [
  { name: '1', start: [-2, 1], objective: banana, bounds: [[1, -1.5, Infinity]], least: 0, at: [1, 1] },
  {
    name: '4',
    start: [1.125, 0.125],
    objective: (t, x) => {
      const a = t.shift(x[0], 1);
      return t.add(t.scale(t.multiply(a, a, a), 1 / 3), x[1]);
    },
    bounds: [
      [0, 1, Infinity],
      [1, 0, Infinity],
    ],
    least: 8 / 3, // derived
    at: [1, 0],
  },
  {
    name: '5',
    start: [0, 0],
    objective: (t, x) =>
      t.add(t.sine(t.add(x[0], x[1])), t.square(t.subtract(x[0], x[1])), sum(t, x, [-1.5, 1], [2.5, 2], [1])),
    bounds: [
      [0, -1.5, 4],
      [1, -3, 3],
    ],
    least: -SQRT3 / 2 - Math.PI / 3, // derived
    at: [0.5 - Math.PI / 3, -0.5 - Math.PI / 3],
  },
  {
    name: '6',
    start: [-1.2, 1],
    objective: (t, x) => t.square(sum(t, x, [1], [-1, 1])),
    equations: (t, x) => [sum(t, x, [10, 2], [-10, 1, 1])],
    least: 0, // derived
    at: [1, 1],
  },
  {
    name: '7',
    start: [2, 2],
    objective: (t, x) => t.subtract(t.external(logarithm, sum(t, x, [1], [1, 1, 1]), t.constant(0)), x[1]),
    equations: (t, x) => [t.add(t.square(sum(t, x, [1], [1, 1, 1])), sum(t, x, [1, 2, 2], [-4]))],
    least: -SQRT3, // derived
    at: [0, SQRT3],
  },
  {
    name: '10',
    start: [-10, 10],
    objective: (t, x) => sum(t, x, [1, 1], [-1, 2]),
    limits: (t, x) => [sum(t, x, [-3, 1, 1], [2, 1, 2], [-1, 2, 2], [1])],
    least: -1, // derived
    at: [0, 1],
  },
  {
    name: '11',
    start: [4.9, 0.1],
    objective: (t, x) => sum(t, x, [1, 1, 1], [-10, 1], [1, 2, 2]),
    limits: (t, x) => [sum(t, x, [1, 2], [-1, 1, 1])],
    least: -8.498464223,
  },
  {
    name: '12',
    start: [0, 0],
    objective: (t, x) => sum(t, x, [0.5, 1, 1], [1, 2, 2], [-1, 1, 2], [-7, 1], [-7, 2]),
    limits: (t, x) => [sum(t, x, [25], [-4, 1, 1], [-1, 2, 2])],
    least: -30, // derived
    at: [2, 3],
  },
  {
    name: '14',
    start: [2, 2],
    objective: (t, x) => sum(t, x, [1, 1, 1], [-4, 1], [1, 2, 2], [-2, 2], [5]),
    equations: (t, x) => [sum(t, x, [1, 1], [-2, 2], [1])],
    limits: (t, x) => [sum(t, x, [-0.25, 1, 1], [-1, 2, 2], [1])],
    least: 9 - 2.875 * Math.sqrt(7), // derived
    at: [(Math.sqrt(7) - 1) / 2, (Math.sqrt(7) + 1) / 4],
  },
  {
    name: '15',
    start: [-2, 1],
    objective: banana,
    limits: (t, x) => [sum(t, x, [1, 1, 2], [-1]), sum(t, x, [1, 1], [1, 2, 2])],
    bounds: [[0, -Infinity, 0.5]],
    least: 306.5,
    at: [0.5, 2],
  },
  {
    name: '24',
    start: [1, 0.5],
    objective: (t, x) =>
      t.scale(
        t.multiply(t.shift(t.square(t.shift(x[0], -3)), -9), t.multiply(x[1], x[1], x[1])),
        1 / (27 * SQRT3),
      ),
    limits: (t, x) => [
      sum(t, x, [1 / SQRT3, 1], [-1, 2]),
      sum(t, x, [1, 1], [SQRT3, 2]),
      sum(t, x, [6], [-1, 1], [-SQRT3, 2]),
    ],
    bounds: every(2, 0, Infinity),
    least: -1, // derived
    at: [3, SQRT3],
  },
  {
    name: '35',
    start: [0.5, 0.5, 0.5],
    objective: (t, x) =>
      sum(t, x, [9], [-8, 1], [-6, 2], [-4, 3], [2, 1, 1], [2, 2, 2], [1, 3, 3], [2, 1, 2], [2, 1, 3]),
    limits: (t, x) => [sum(t, x, [3], [-1, 1], [-1, 2], [-2, 3])],
    bounds: every(3, 0, Infinity),
    least: 1 / 9, // derived
    at: [4 / 3, 7 / 9, 4 / 9],
  },
  {
    name: '39',
    start: [2, 2, 2, 2],
    objective: (t, x) => sum(t, x, [-1, 1]),
    equations: (t, x) => [
      sum(t, x, [1, 2], [-1, 1, 1, 1], [-1, 3, 3]),
      sum(t, x, [1, 1, 1], [-1, 2], [-1, 4, 4]),
    ],
    least: -1, // derived
    at: [1, 1, 0, 0],
  },
  {
    name: '43, Rosen and Suzuki',
    start: [0, 0, 0, 0],
    objective: (t, x) =>
      sum(t, x, [1, 1, 1], [1, 2, 2], [2, 3, 3], [1, 4, 4], [-5, 1], [-5, 2], [-21, 3], [7, 4]),
    limits: (t, x) => [
      sum(t, x, [8], [-1, 1, 1], [-1, 2, 2], [-1, 3, 3], [-1, 4, 4], [-1, 1], [1, 2], [-1, 3], [1, 4]),
      sum(t, x, [10], [-1, 1, 1], [-2, 2, 2], [-1, 3, 3], [-2, 4, 4], [1, 1], [1, 4]),
      sum(t, x, [5], [-2, 1, 1], [-1, 2, 2], [-1, 3, 3], [-2, 1], [1, 2], [1, 4]),
    ],
    least: -44, // derived
    at: [0, 1, 2, -1],
  },
  {
    name: '71',
    start: [1, 5, 5, 1],
    objective: (t, x) => sum(t, x, [1, 1, 1, 4], [1, 1, 2, 4], [1, 1, 3, 4], [1, 3]),
    equations: (t, x) => [sum(t, x, [1, 1, 1], [1, 2, 2], [1, 3, 3], [1, 4, 4], [-40])],
    limits: (t, x) => [sum(t, x, [1, 1, 2, 3, 4], [-25])],
    bounds: every(4, 1, 5),
    least: 17.0140173,
    at: [1, 4.7429994, 3.8211503, 1.3794082],
  },
  {
    name: '76',
    start: [0.5, 0.5, 0.5, 0.5],
    objective: (t, x) =>
      sum(
        t,
        x,
        [1, 1, 1],
        [0.5, 2, 2],
        [1, 3, 3],
        [0.5, 4, 4],
        [-1, 1, 3],
        [1, 3, 4],
        [-1, 1],
        [-3, 2],
        [1, 3],
        [-1, 4],
      ),
    limits: (t, x) => [
      sum(t, x, [5], [-1, 1], [-2, 2], [-1, 3], [-1, 4]),
      sum(t, x, [4], [-3, 1], [-1, 2], [-2, 3], [1, 4]),
      sum(t, x, [1, 2], [4, 3], [-1.5]),
    ],
    bounds: every(4, 0, Infinity),
    least: -103 / 22,
  },
];

function chainOfProgram({ start, objective, equations, limits, bounds }: Program) {
  const count = start.length;
  const rows = equations ? lengthOf(equations, count) : 0;
  return chainOf({
    states: [
      ...start.map((_, i) => `x${i + 1}`),
      ...Array.from({ length: rows }, (_, i) => `equation ${i + 1}`),
    ],
    controls: [],
    stages: 1,
    stage: (t, x) => [...start.map(() => t.constant(0)), ...(equations?.(t, x) ?? []), objective(t, x)],
    limits: limits && { names: ['first', 'second', 'third'].slice(0, lengthOf(limits, count)), of: limits },
    stateBounds: bounds,
    ends: Array.from({ length: rows }, (_, i) => [
      { at: 0 as const, state: count + i, value: 0 },
      { at: 1 as const, state: count + i, value: 0 },
    ]).flat(),
    guess: () => [...start, ...new Array(rows).fill(0)],
  });
}

/** How many terms a part of a program has. */
function lengthOf(part: (t: Tape, x: readonly Term[]) => readonly Term[], count: number): number {
  const t = new Tape();
  return part(
    t,
    Array.from({ length: count }, () => t.input()),
  ).length;
}

function answered(result: ChainAnswer | ChainFailure): ChainAnswer {
  if (!result.ok) throw new Error(`${result.reason}: ${JSON.stringify(result.worst)}`);
  return result;
}

describe('Hock & Schittkowski (from memory)', () => {
  test.each(PROGRAMS)('problem $name', program => {
    const { problem, guess } = chainOfProgram(program);
    const { objective, x } = answered(solveChain(problem, guess));
    expect(Math.abs(objective - program.least)).toBeLessThan(2e-6 * Math.max(1, Math.abs(program.least)));
    program.at?.forEach((value, i) => {
      expect(Math.abs(x[i] - value)).toBeLessThan(1e-3);
    });
  });
});

/** Down a smooth curve from rest to a point 2 m across and 1 m below, the time a state that does not change. */
function brachistochrone(stages: number) {
  return chainOf({
    states: ['across', 'down', 'speed', 'time'],
    controls: ['direction'],
    stages,
    stage: (t, [, , speed, time], [direction]) => [
      t.multiply(time, speed, t.sine(direction)),
      t.multiply(time, speed, t.cosine(direction)),
      t.multiply(time, t.scale(t.cosine(direction), 9.81)),
      t.constant(0),
      time,
    ],
    stateBounds: [[3, 0.01, 10]],
    controlBounds: [[0, -0.5, 3]],
    ends: [
      { at: 0, state: 0, value: 0 },
      { at: 0, state: 1, value: 0 },
      { at: 0, state: 2, value: 0 },
      { at: 1, state: 0, value: 2 },
      { at: 1, state: 1, value: 1 },
    ],
    guess: share => [2 * share, share, 4 * share, 1],
    controlGuess: [1],
  });
}

test('brachistochrone: the cycloid’s time (derived), nearer with every finer mesh', () => {
  // Across r (φ − sin φ), down r (1 − cos φ), time φ √(r/g).
  const angle = brent(phi => (phi - Math.sin(phi)) / (1 - Math.cos(phi)) - 2, 0.1, 6);
  const least = angle * Math.sqrt(1 / (1 - Math.cos(angle)) / 9.81);
  const errors = [10, 20, 40, 80].map(stages => {
    const { problem, guess } = brachistochrone(stages);
    return Math.abs(answered(solveChain(problem, guess, { tolerance: 1e-9 })).objective - least);
  });
  for (let i = 1; i < errors.length; i++) expect(errors[i]).toBeLessThan(errors[i - 1] / 3.5);
  expect(errors[3]).toBeLessThan(1e-4);
});

test('shortest dash from rest to rest: full ahead, full back (derived)', () => {
  const { problem, guess } = shortestDash(40);
  const { objective, u } = answered(solveChain(problem, guess, { tolerance: 1e-9 }));
  expect(objective).toBeCloseTo(2, 6);
  for (let k = 0; k < 40; k++) expect(u[k]).toBeCloseTo(k < 20 ? 1 : -1, 4);
});

test('gentlest move from rest to rest: 12 with an acceleration that falls evenly from 6 to −6 (derived)', () => {
  const errors = [10, 20, 40].map(stages => {
    const { problem, guess } = gentlestMove(stages);
    const { objective, u, iterations } = answered(solveChain(problem, guess, { tolerance: 1e-10 }));
    // A quadratic problem without bounds is one Newton step.
    expect(iterations).toBe(1);
    for (let k = 1; k + 1 < stages; k++) expect(u[k + 1] - u[k]).toBeCloseTo(u[k] - u[k - 1], 8);
    return Math.abs(objective - 12);
  });
  for (let i = 1; i < errors.length; i++) expect(errors[i]).toBeLessThan(errors[i - 1] / 3.9);
});
