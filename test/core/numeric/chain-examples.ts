import { type ChainGuess, type ChainProblem, Tape, type Term } from '../../../core/numeric/index.ts';

/** A condition of one end: the state at 0 (start) or 1 (end) of the chain has this value. */
export interface EndValue {
  readonly at: 0 | 1;
  readonly state: number;
  readonly value: number;
}

interface ChainParts {
  readonly states: readonly string[];
  readonly controls: readonly string[];
  readonly stages: number;
  /** Length of the whole chain, cut into equal stages. */
  readonly length?: number;
  /** f for every state, then the cost. */
  readonly stage: (t: Tape, states: readonly Term[], controls: readonly Term[]) => readonly Term[];
  readonly limits?: {
    readonly names: readonly string[];
    readonly of: (t: Tape, states: readonly Term[]) => readonly Term[];
  };
  readonly stateBounds?: readonly (readonly [state: number, low: number, high: number])[];
  readonly controlBounds?: readonly (readonly [control: number, low: number, high: number])[];
  readonly ends?: readonly EndValue[];
  /** States at a share of the chain. */
  readonly guess: (share: number) => readonly number[];
  readonly controlGuess?: readonly number[];
}

/** A chain problem and a guess from its parts. */
export function chainOf(parts: ChainParts): { problem: ChainProblem; guess: ChainGuess } {
  const { states, controls, stages: N } = parts;
  const n = states.length;
  const m = controls.length;
  const t = new Tape();
  const x = states.map(() => t.input());
  const u = controls.map(() => t.input());
  const stage = t.compile(parts.stage(t, x, u));
  const stateLow = new Float64Array((N + 1) * n).fill(-Infinity);
  const stateHigh = new Float64Array((N + 1) * n).fill(Infinity);
  for (const [i, low, high] of parts.stateBounds ?? []) {
    for (let k = 0; k <= N; k++) {
      stateLow[k * n + i] = low;
      stateHigh[k * n + i] = high;
    }
  }
  const controlLow = new Float64Array(N * m).fill(-Infinity);
  const controlHigh = new Float64Array(N * m).fill(Infinity);
  for (const [i, low, high] of parts.controlBounds ?? []) {
    for (let k = 0; k < N; k++) {
      controlLow[k * m + i] = low;
      controlHigh[k * m + i] = high;
    }
  }
  const rows = [...(parts.ends ?? [])].sort((a, b) => b.at - a.at);
  const start = new Float64Array(rows.length * n);
  const end = new Float64Array(rows.length * n);
  rows.forEach(({ at, state }, r) => {
    (at === 1 ? end : start)[r * n + state] = 1;
  });
  const xGuess = new Float64Array((N + 1) * n);
  for (let k = 0; k <= N; k++) xGuess.set(parts.guess(k / N), k * n);
  const uGuess = new Float64Array(N * m);
  for (let k = 0; k < N; k++) uGuess.set(parts.controlGuess ?? new Array(m).fill(0), k * m);
  const limits = parts.limits && {
    names: parts.limits.names,
    formula: limitFormula(n, parts.limits.of),
    data: new Float64Array(0),
  };
  return {
    problem: {
      states,
      controls,
      stages: N,
      step: new Float64Array(N).fill((parts.length ?? 1) / N),
      stage,
      stageData: new Float64Array(0),
      limits,
      stateLow,
      stateHigh,
      controlLow,
      controlHigh,
      ends: { start, end, value: Float64Array.from(rows, row => row.value) },
    },
    guess: { x: xGuess, u: uGuess },
  };
}

function limitFormula(n: number, of: (t: Tape, states: readonly Term[]) => readonly Term[]) {
  const t = new Tape();
  const x = Array.from({ length: n }, () => t.input());
  return t.compile(of(t, x));
}

/**
 * Least time over a distance from rest to rest with an acceleration within ±1: full ahead, full back, 2 √distance.
 * The time is a state that does not change.
 */
export function shortestDash(stages: number, distance = 1, firstTime = 1, leastTime = 0.01) {
  return chainOf({
    states: ['place', 'speed', 'time'],
    controls: ['acceleration'],
    stages,
    stage: (t, [, speed, time], [acceleration]) => [
      t.multiply(time, speed),
      t.multiply(time, acceleration),
      t.constant(0),
      time,
    ],
    stateBounds: [[2, leastTime, 100]],
    controlBounds: [[0, -1, 1]],
    ends: [
      { at: 0, state: 0, value: 0 },
      { at: 0, state: 1, value: 0 },
      { at: 1, state: 0, value: distance },
      { at: 1, state: 1, value: 0 },
    ],
    guess: () => [0, 0, firstTime],
  });
}

/** Least ∫ a² dt over a distance from rest to rest in a time of 1: 12 distance². */
export function gentlestMove(stages: number, distance = 1) {
  return chainOf({
    states: ['place', 'speed'],
    controls: ['acceleration'],
    stages,
    stage: (t, [, speed], [acceleration]) => [
      t.scale(speed, 1),
      t.scale(acceleration, 1),
      t.square(acceleration),
    ],
    ends: [
      { at: 0, state: 0, value: 0 },
      { at: 0, state: 1, value: 0 },
      { at: 1, state: 0, value: distance },
      { at: 1, state: 1, value: 0 },
    ],
    guess: () => [0, 0],
  });
}

/** A swing from hanging to upright with little strength: many turning points on the way. */
export function swingUp(stages: number, strength = 3, length = 4) {
  return chainOf({
    states: ['angle', 'rate'],
    controls: ['moment'],
    stages,
    length,
    stage: (t, [angle, rate], [moment]) => [
      t.scale(rate, 1),
      t.subtract(moment, t.scale(t.sine(angle), 9.81)),
      t.square(moment),
    ],
    controlBounds: [[0, -strength, strength]],
    ends: [
      { at: 0, state: 0, value: 0 },
      { at: 0, state: 1, value: 0 },
      { at: 1, state: 0, value: Math.PI },
      { at: 1, state: 1, value: 0 },
    ],
    guess: share => [Math.PI * share, 0],
  });
}
