import { describe, expect, test } from 'vitest';
import { type ChainAnswer, type ChainFailure, ChainSolver, solveChain } from '../../../core/numeric/index.ts';
import { chainOf, gentlestMove, shortestDash, swingUp } from './chain-examples.ts';

function answered(result: ChainAnswer | ChainFailure): ChainAnswer {
  if (!result.ok) throw new Error(`${result.reason}: ${JSON.stringify(result.worst)}`);
  return result;
}

function failed(result: ChainAnswer | ChainFailure): ChainFailure {
  if (result.ok) throw new Error(`answered ${result.objective}`);
  return result;
}

describe('multipliers are what inputs are worth', () => {
  test('of a forcing: differences of the objective', () => {
    const { problem, guess } = swingUp(24, 30);
    const base = answered(solveChain(problem, guess, { tolerance: 1e-10 }));
    const h = 1e-4;
    for (const at of [0, 7, 20, 33, 47]) {
      const objective = (by: number) => {
        const forcing = new Float64Array(48);
        forcing[at] = by;
        return answered(solveChain({ ...problem, forcing }, base, { tolerance: 1e-10 })).objective;
      };
      const wanted = (objective(h) - objective(-h)) / (2 * h);
      // The multiplier weighs f, which stands on the other side of the equation than x⁺.
      expect(base.multipliers.costate[at]).toBeCloseTo(wanted, 4);
    }
  });
  test('of a condition at an end: differences of the objective', () => {
    const { problem, guess } = gentlestMove(20);
    const base = answered(solveChain(problem, guess, { tolerance: 1e-10 }));
    const objective = (distance: number) =>
      answered(solveChain(gentlestMove(20, distance).problem, base, { tolerance: 1e-10 })).objective;
    expect(base.multipliers.ends[0]).toBeCloseTo(-(objective(1.001) - objective(0.999)) / 0.002, 5);
  });
});

test('conditions at the ends that say the same twice do no harm', () => {
  const { problem, guess } = gentlestMove(10);
  const { start, end, value } = problem.ends ?? { start: [], end: [], value: [] };
  const twice = {
    start: Float64Array.of(...start.slice(0, 4), ...start),
    end: Float64Array.of(...end.slice(0, 4), ...end),
    value: Float64Array.of(...value.slice(0, 2), ...value),
  };
  const once = answered(solveChain(problem, guess));
  expect(answered(solveChain({ ...problem, ends: twice }, guess)).objective).toBeCloseTo(once.objective, 5);
});

describe('crude starts', () => {
  test.each([
    [0.1, 1, 1e-4],
    [1, 1, 0.01],
    [3, 1, 1e-4],
    [20, 1, 1e-4],
    [0.1, 30, 0.05],
    [20, 30, 1e-4],
  ])('a shortest dash begun with a time of %f s over %f m', (firstTime, distance, leastTime) => {
    for (const barrier of [0.1, 0.01]) {
      const { problem, guess } = shortestDash(20, distance, firstTime, leastTime);
      const { objective } = answered(solveChain(problem, guess, { barrier }));
      expect(objective).toBeCloseTo(2 * Math.sqrt(distance), 3);
    }
  });
  test('a swing up with too little strength to go straight, from a straight guess', () => {
    const { problem, guess } = swingUp(60);
    const answer = answered(solveChain(problem, guess));
    expect(answer.violation).toBeLessThan(1e-7);
    // It swings back first.
    expect(Math.min(...answer.x.filter((_, i) => i % 2 === 0))).toBeLessThan(-0.3);
  });
  test('a guess outside its bounds is taken in', () => {
    const { problem, guess } = shortestDash(10);
    const outside = { x: guess.x.map((v, i) => (i % 3 === 2 ? -5 : v)), u: guess.u.map(() => 7) };
    expect(answered(solveChain(problem, outside)).objective).toBeCloseTo(2, 3);
  });
});

test('where curvature would lead to a greatest value the step is turned to the least', () => {
  // −cos x has its least at 0 and its greatest at π, near which the guess stands.
  const { problem, guess } = chainOf({
    states: ['angle'],
    controls: ['rate'],
    stages: 6,
    stage: (t, [angle], [rate]) => [
      t.scale(rate, 1),
      t.add(t.scale(t.cosine(angle), -1), t.scale(t.square(rate), 0.01)),
    ],
    guess: () => [3],
  });
  let regularised = 0;
  const { objective, x } = answered(
    solveChain(problem, guess, { onStep: s => (regularised = Math.max(regularised, s.regularised)) }),
  );
  expect(regularised).toBeGreaterThan(0);
  expect(objective).toBeCloseTo(-1, 6);
  for (const angle of x) expect(Math.cos(angle)).toBeCloseTo(1, 6);
});

test('where the equations’ curvature is believed in part the answer is the same', () => {
  const { problem, guess } = swingUp(60, 30);
  const plain = answered(solveChain(problem, guess));
  let regularised = 0;
  const soft = answered(
    solveChain(problem, guess, {
      soften: true,
      onStep: s => {
        regularised = Math.max(regularised, s.regularised);
      },
    }),
  );
  expect(soft.objective).toBeCloseTo(plain.objective, 5);
  // With the costs' own curvature there is always a step; only damping makes movement dear.
  expect(regularised).toBeLessThan(1);
});

describe('from centre to centre', () => {
  test('the answer comes as near the least as the last barrier lets it', () => {
    const { problem, guess } = shortestDash(20);
    const gaps = [1e-3, 1e-5, 1e-7].map(last => {
      const barriers: number[] = [];
      const { objective } = answered(
        solveChain(problem, guess, {
          atCentre: ({ barrier }) => {
            barriers.push(barrier);
            return barrier > last ? 'lower' : 'done';
          },
        }),
      );
      expect(barriers).toEqual([...barriers].sort((a, b) => b - a));
      return objective - 2;
    });
    expect(gaps[0]).toBeGreaterThan(gaps[1]);
    expect(gaps[1]).toBeGreaterThan(gaps[2]);
    expect(gaps[2]).toBeLessThan(1e-4);
  });
  test('a forcing that is changed on the way is solved for', () => {
    const { problem, guess } = swingUp(24, 30);
    const forcing = new Float64Array(48);
    let changes = 0;
    const found = answered(
      solveChain({ ...problem, forcing }, guess, {
        atCentre: ({ barrier }) => {
          if (barrier > 1e-8) return 'lower';
          if (changes++ > 3) return 'done';
          forcing[7] = 1e-3 * changes;
          return 'again';
        },
      }),
    );
    expect(found.violation).toBeLessThan(1e-6);
    const whole = answered(solveChain({ ...problem, forcing }, guess));
    expect(found.objective).toBeCloseTo(whole.objective, 4);
  });
});

describe('what has no answer says so and names what is missed', () => {
  test('a distance out of reach', () => {
    const { problem, guess } = shortestDash(10, 1, 0.5);
    const { reason, worst } = failed(
      solveChain({ ...problem, stateHigh: problem.stateHigh.map((v, i) => (i % 3 === 2 ? 1 : v)) }, guess),
    );
    expect(reason).toBe('no feasible step');
    expect(['place', 'speed', 'end condition 1', 'end condition 2']).toContain(worst.name);
    expect(worst.by).toBeGreaterThan(1e-3);
  });
  test('a limit that contradicts a bound', () => {
    const { problem, guess } = chainOf({
      states: ['height'],
      controls: ['rate'],
      stages: 4,
      stage: (t, _, [rate]) => [t.scale(rate, 1), t.square(rate)],
      limits: { names: ['over the bar'], of: (t, [height]) => [t.shift(height, -2)] },
      stateBounds: [[0, 0, 1]],
      guess: () => [0.5],
    });
    const { reason, worst } = failed(solveChain(problem, guess));
    expect(reason).toBe('no feasible step');
    expect(worst.name).toBe('over the bar');
    expect(worst.at).toBeGreaterThanOrEqual(0);
    expect(worst.at).toBeLessThanOrEqual(4);
    expect(worst.by).toBeGreaterThan(0.9);
  });
  test('conditions that contradict each other', () => {
    const { problem, guess } = chainOf({
      states: ['height'],
      controls: ['rate'],
      stages: 4,
      stage: (t, _, [rate]) => [t.scale(rate, 1), t.square(rate)],
      ends: [
        { at: 1, state: 0, value: 1 },
        { at: 0, state: 0, value: 0 },
        { at: 0, state: 0, value: 1 },
      ],
      guess: () => [0],
    });
    const { reason, worst } = failed(solveChain(problem, guess));
    expect(reason).toBe('no feasible step');
    expect(worst.name).toMatch(/^end condition [23]$/);
    expect(worst.by).toBeGreaterThan(0.3);
  });
  test('a guess where the equations are no numbers', () => {
    const { problem, guess } = chainOf({
      states: ['height'],
      controls: ['rate'],
      stages: 2,
      stage: (t, [height], [rate]) => [t.multiply(rate, t.squareRoot(height)), t.square(rate)],
      guess: share => [share < 0.6 ? 1 : -5],
    });
    expect(failed(solveChain(problem, guess)).reason).toBe('not a number');
  });
  test('steps used up', () => {
    const { problem, guess } = shortestDash(10);
    const failure = failed(solveChain(problem, guess, { mostSteps: 2 }));
    expect(failure).toMatchObject({ reason: 'too many steps', iterations: 2 });
    expect(failure.x).toHaveLength(33);
  });
  test('cancelled', () => {
    const { problem, guess } = shortestDash(10);
    let request = 0;
    const failure = failed(solveChain(problem, guess, { cancelled: () => ++request > 3 }));
    expect(failure).toMatchObject({ reason: 'cancelled', iterations: 3 });
  });
});

test('a neighbour’s answer is nearer than a bare guess', () => {
  const { problem, guess } = swingUp(60);
  const solver = new ChainSolver(problem);
  const cold = answered(solver.solve(guess));
  const neighbour = { ...problem, controlHigh: problem.controlHigh.map(v => 0.99 * v) };
  const warm = answered(solver.solve(cold, {}, neighbour));
  const bare = answered(solver.solve({ x: cold.x, u: cold.u }, {}, neighbour));
  expect(warm.objective).toBeCloseTo(bare.objective, 5);
  expect(warm.iterations).toBeLessThan(bare.iterations);
  expect(warm.iterations).toBeLessThan(cold.iterations / 2);
  // The same problem again is all but done.
  expect(answered(solver.solve(cold)).iterations).toBeLessThan(10);
});

test('solving again gives the same answer and makes no new work space', () => {
  const { problem, guess } = swingUp(40, 6);
  const solver = new ChainSolver(problem);
  const first = answered(solver.solve(guess));
  const Original = Float64Array;
  let made = 0;
  globalThis.Float64Array = new Proxy(Original, {
    construct: (target, args) => {
      made++;
      return Reflect.construct(target, args);
    },
  });
  try {
    const second = answered(solver.solve(guess));
    expect(made).toBe(0);
    expect(second).toEqual(first);
  } finally {
    globalThis.Float64Array = Original;
  }
  // The answer is the caller's: the next solution does not write into it.
  const kept = first.x.slice();
  solver.solve({ x: guess.x.map(v => v + 0.1), u: guess.u });
  expect(first.x).toEqual(kept);
});

test('steps are told while they are made', () => {
  const { problem, guess } = shortestDash(10);
  const steps: number[] = [];
  const answer = answered(
    solveChain(problem, guess, {
      onStep: s => {
        steps.push(s.iteration);
        expect(s.alpha).toBeGreaterThanOrEqual(0);
        expect(s.alpha).toBeLessThanOrEqual(1);
        expect(s.barrier).toBeGreaterThan(0);
      },
    }),
  );
  expect(steps).toEqual(Array.from({ length: answer.iterations + 1 }, (_, i) => i));
});
