/**
 * Exact derivatives of a recorded formula as another recording. What an operation's slopes and curvatures are is known
 * of each kind; the chain rule joins them once, on a tape that computes nothing twice, instead of at every point.
 *
 * The Jacobian comes of eliminating the operations between inputs and outputs, the one with the fewest ways through it
 * first (vertex elimination); the Hessian of pushing the curvature of each operation back to its operands, the last
 * first (edge pushing). A. Griewank & A. Walther, Evaluating Derivatives, 2nd ed. 2008, ch. 9; R. M. Gower & M. P. Mello,
 * Optim. Methods Softw. 27 (2012) 251–273 (both from memory).
 */

import { ChainRule, type Local, localsAt, ONE, replay, times, type Weight } from './local-derivatives.ts';
import { Recorder, type Term } from './recorder.ts';
import { isBinary, Op, type Recording } from './tape-operation.ts';

/** What a derivative recording returns first to last, and the places of those that can differ from zero. */
export interface DerivativeRecording {
  /** Inputs as the formula's; data: the formula's, then a weight for each of its outputs. */
  readonly recording: Recording;
  /** Places in the row-major Jacobian, outputs × inputs, of what follows the formula's own outputs. */
  readonly jacobian: Int32Array;
  /** Places in the row-major Hessian's lower half, inputs × inputs, of what follows those. */
  readonly hessian: Int32Array;
  /** Number of each input whose gradient follows, and of each datum whose gradient comes last. */
  readonly gradient: Int32Array;
  readonly data: Int32Array;
}

/** Outputs, Jacobian, and of Σ weight·output Hessian and gradient; with `withData` the one to the data too. */
export function derivativesOf(of: Recording, withData: boolean): DerivativeRecording {
  const { code, a, outputs, inputCount, dataCount } = of;
  const t = new Recorder();
  const inputs = Array.from({ length: inputCount }, () => t.input());
  const data = Array.from({ length: dataCount }, () => t.datum());
  const weights = Array.from(outputs, () => t.datum());
  const chain = new ChainRule(t);
  const values = replay(of, t, inputs, data);
  const locals = values.map((_, i) => localsAt(of, t, chain, values, i));
  const reached = reachedBy(of, code => code === Op.Input);
  const jacobian = eliminated(of, chain, locals, reached);
  const { adjoints, hessian } = pushed(of, chain, locals, withData ? null : reached, weights);
  const found: Term[] = Array.from(outputs, i => values[i]);
  const places = (entries: Iterable<readonly [number, Weight]>) => {
    const sorted = [...entries].sort(([p], [q]) => p - q);
    for (const [, weight] of sorted) found.push(chain.term(weight));
    return Int32Array.from(sorted, ([place]) => place);
  };
  const jacobianPlaces = places(jacobian);
  const hessianPlaces = places(hessian);
  const gradient = (kind: number) =>
    places(
      adjoints.flatMap((adjoint, i): [number, Weight][] =>
        adjoint && code[i] === kind ? [[a[i], adjoint]] : [],
      ),
    );
  const gradientPlaces = gradient(Op.Input);
  const dataPlaces = withData ? gradient(Op.Datum) : new Int32Array(0);
  return {
    recording: t.record(found),
    jacobian: jacobianPlaces,
    hessian: hessianPlaces,
    gradient: gradientPlaces,
    data: dataPlaces,
  };
}

/** Whether an operation is one of a kind, or depends on one. */
function reachedBy({ code, a, b }: Recording, kind: (code: number) => boolean): boolean[] {
  const reached: boolean[] = [];
  for (let i = 0; i < code.length; i++) {
    reached.push(
      code[i] <= Op.Constant ? kind(code[i]) : reached[a[i]] || (isBinary(code[i]) && reached[b[i]]),
    );
  }
  return reached;
}

/** The Jacobian's entries, by their place. */
function eliminated(
  { code, a, outputs, inputCount }: Recording,
  chain: ChainRule,
  locals: readonly Local[],
  reached: readonly boolean[],
): Map<number, Weight> {
  const size = code.length;
  // Outputs are sinks beyond the operations, so that one that others need is eliminated as they are.
  const before = Array.from({ length: size + outputs.length }, () => new Map<number, Weight>());
  const after = Array.from({ length: size }, () => new Set<number>());
  const join = (from: number, to: number, weight: Weight) => {
    before[to].set(from, chain.sum(before[to].get(from), weight));
    after[from].add(to);
  };
  for (let i = 0; i < size; i++) {
    for (const [from, slope] of locals[i].slopes) if (reached[from]) join(from, i, slope);
  }
  for (let k = 0; k < outputs.length; k++) if (reached[outputs[k]]) join(outputs[k], size + k, ONE);
  const left = new Set<number>();
  for (let i = 0; i < size; i++) if (reached[i] && code[i] > Op.Constant) left.add(i);
  while (left.size > 0) {
    let best = -1;
    let fewest = Infinity;
    for (const i of left) {
      const ways = before[i].size * after[i].size;
      if (ways < fewest) {
        fewest = ways;
        best = i;
      }
    }
    left.delete(best);
    for (const to of after[best]) {
      const onward = before[to].get(best) as Weight;
      before[to].delete(best);
      for (const [from, slope] of before[best]) join(from, to, chain.product(slope, onward));
    }
    for (const from of before[best].keys()) after[from].delete(best);
  }
  const entries = new Map<number, Weight>();
  for (let k = 0; k < outputs.length; k++) {
    for (const [from, weight] of before[size + k]) {
      const place = k * inputCount + a[from];
      entries.set(place, chain.sum(entries.get(place), weight));
    }
  }
  return entries;
}

/** Adjoints of all operations, and the Hessian's lower half by place. */
function pushed(
  { code, a, outputs, inputCount }: Recording,
  chain: ChainRule,
  locals: readonly Local[],
  reached: readonly boolean[] | null,
  weights: readonly Term[],
) {
  const size = code.length;
  const adjoints: (Weight | undefined)[] = Array.from({ length: size });
  for (const [k, i] of outputs.entries()) adjoints[i] = chain.sum(adjoints[i], times(1, weights[k]));
  // Curvature between operations i and j ≤ i, kept at both.
  const curvature = Array.from({ length: size }, () => new Map<number, Weight>());
  const bend = (i: number, j: number, weight: Weight) => {
    const sum = chain.sum(curvature[i].get(j), weight);
    curvature[i].set(j, sum);
    curvature[j].set(i, sum);
  };
  const counts = (i: number) => reached === null || reached[i];
  for (let i = size - 1; i >= 0; i--) {
    if (code[i] <= Op.Constant || !counts(i)) continue;
    const slopes = locals[i].slopes.filter(([j]) => counts(j));
    const own = curvature[i].get(i);
    for (const [p, weight] of curvature[i]) {
      if (p === i) continue;
      curvature[p].delete(i);
      for (const [j, slope] of slopes) {
        const share = chain.product(slope, weight);
        bend(p, j, j === p ? { ...share, factor: 2 * share.factor } : share);
      }
    }
    if (own) {
      for (const [n, [j, slope]] of slopes.entries()) {
        const first = chain.product(slope, own);
        for (const [k, other] of slopes.slice(n)) bend(j, k, chain.product(first, other));
      }
    }
    const adjoint = adjoints[i];
    if (!adjoint) continue;
    for (const [j, k, weight] of locals[i].bends) {
      if (counts(j) && counts(k)) bend(j, k, chain.product(weight, adjoint));
    }
    for (const [j, slope] of slopes) adjoints[j] = chain.sum(adjoints[j], chain.product(slope, adjoint));
  }
  const entries = new Map<number, Weight>();
  for (let i = 0; i < size; i++) {
    if (code[i] !== Op.Input) continue;
    for (const [j, weight] of curvature[i]) {
      if (code[j] === Op.Input && a[j] <= a[i]) entries.set(a[i] * inputCount + a[j], weight);
    }
  }
  return { adjoints, hessian: entries };
}
