/**
 * Exact derivatives of a recorded formula as another recording. What an operation's slopes and curvatures are is known
 * of each kind; the chain rule joins them once, on a tape that computes nothing twice, instead of at every point.
 *
 * The Jacobian comes of eliminating the operations between inputs and outputs, the one with the fewest ways through it
 * first (vertex elimination); the Hessian of pushing the curvature of each operation back to its operands, the last
 * first (edge pushing). A. Griewank & A. Walther, Evaluating Derivatives, 2nd ed. 2008, ch. 9; R. M. Gower & M. P. Mello,
 * Optim. Methods Softw. 27 (2012) 251–273 (both from memory).
 */

import { Tape, type Term } from './tape.ts';
import { isBinary, Op, type Recording, type TwoArgumentFunction } from './tape-operation.ts';

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

/** A factor times a term, or the factor alone. */
interface Weight {
  readonly factor: number;
  readonly term: Term | null;
}

const ONE: Weight = { factor: 1, term: null };

/** Slopes to the operands, and curvatures between them: [operand, slope], [operand, operand, curvature]. */
interface Local {
  readonly slopes: readonly (readonly [number, Weight])[];
  readonly bends: readonly (readonly [number, number, Weight])[];
}

/** Outputs, Jacobian, and of Σ weight·output Hessian and gradient; with `withData` the one to the data too. */
export function derivativesOf(of: Recording, withData: boolean): DerivativeRecording {
  const { code, a, outputs, inputCount, dataCount } = of;
  const t = new Tape();
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

/** Sums and products of weights, written on a tape. */
class ChainRule {
  constructor(private readonly t: Tape) {}

  sum(x: Weight | undefined, y: Weight): Weight {
    const { t } = this;
    if (!x) return y;
    if (x.term === y.term) return { factor: x.factor + y.factor, term: x.term };
    if (x.term === null || y.term === null || Math.abs(x.factor) !== Math.abs(y.factor)) {
      return { factor: 1, term: t.add(this.term(x), this.term(y)) };
    }
    const { factor } = x;
    const term = factor === y.factor ? t.add(x.term, y.term) : t.subtract(x.term, y.term);
    return { factor, term };
  }

  product(x: Weight, y: Weight): Weight {
    const factor = x.factor * y.factor;
    const term = x.term === null ? y.term : y.term === null ? x.term : this.t.multiply(x.term, y.term);
    return { factor, term };
  }

  term({ factor, term }: Weight): Term {
    return term === null ? this.t.constant(factor) : this.t.scale(term, factor);
  }
}

/** The formula's own operations on another tape. */
function replay(of: Recording, t: Tape, inputs: readonly Term[], data: readonly Term[]): Term[] {
  const values: Term[] = [];
  for (let i = 0; i < of.code.length; i++) values.push(replayed(of, t, inputs, data, values, i));
  return values;
}

function replayed(
  { code, a, b, number, externals }: Recording,
  t: Tape,
  inputs: readonly Term[],
  data: readonly Term[],
  values: readonly Term[],
  i: number,
): Term {
  const p = values[a[i]];
  const q = values[b[i]];
  switch (code[i]) {
    case Op.Input:
      return inputs[a[i]];
    case Op.Datum:
      return data[a[i]];
    case Op.Constant:
      return t.constant(number[i]);
    case Op.Add:
      return t.add(p, q);
    case Op.Subtract:
      return t.subtract(p, q);
    case Op.Multiply:
      return t.multiply(p, q);
    case Op.Divide:
      return t.multiply(p, t.reciprocal(q));
    case Op.External:
      return t.external(externals[i] as TwoArgumentFunction, p, q);
    case Op.Scale:
      return t.scale(p, number[i]);
    case Op.Shift:
      return t.shift(p, number[i]);
    case Op.Sine:
      return t.sine(p);
    case Op.Cosine:
      return t.cosine(p);
    case Op.Tanh:
      return t.tanh(p);
    case Op.Root:
      return t.squareRoot(p);
    case Op.Square:
      return t.square(p);
    case Op.Reciprocal:
      return t.reciprocal(p);
    default:
      throw new RangeError(`operation ${code[i]} found; those of a formula are accepted`);
  }
}

const plain = (factor: number): Weight => ({ factor, term: null });
const times = (factor: number, term: Term): Weight => ({ factor, term });

/** The slopes and curvatures of operation i; operands that are the same are one. */
function localsAt(of: Recording, t: Tape, chain: ChainRule, values: readonly Term[], i: number): Local {
  const { code, a, b, number } = of;
  if (code[i] <= Op.Constant) return { slopes: [], bends: [] };
  const y = values[i];
  const p = values[a[i]];
  const [at, to] = [a[i], b[i]];
  if (!isBinary(code[i])) {
    const [slope, bend] = unaryLocal(code[i], t, y, p, number[i]);
    return { slopes: [[at, slope]], bends: bend ? [[at, at, bend]] : [] };
  }
  const [fa, fb, faa, fab, fbb] = binaryLocal(code[i], t, y, p, values[to]);
  if (at === to) {
    const bend = [faa, fab, fab, fbb].reduce<Weight | null>(
      (sum, w) => (w ? chain.sum(sum ?? undefined, w) : sum),
      null,
    );
    return { slopes: [[at, chain.sum(fa, fb)]], bends: bend ? [[at, at, bend]] : [] };
  }
  const bends: [number, number, Weight][] = [];
  if (faa) bends.push([at, at, faa]);
  if (fab) bends.push([at, to, fab]);
  if (fbb) bends.push([to, to, fbb]);
  return {
    slopes: [
      [at, fa],
      [to, fb],
    ],
    bends,
  };
}

/** f' and f''. */
function unaryLocal(code: number, t: Tape, y: Term, p: Term, number: number): [Weight, Weight | null] {
  switch (code) {
    case Op.Scale:
      return [plain(number), null];
    case Op.Shift:
      return [ONE, null];
    case Op.Sine:
      return [times(1, t.cosine(p)), times(-1, y)];
    case Op.Cosine:
      return [times(-1, t.sine(p)), times(-1, y)];
    case Op.Tanh: {
      const slope = t.shift(t.scale(t.square(y), -1), 1);
      return [times(1, slope), times(-2, t.multiply(y, slope))];
    }
    case Op.Root: {
      const inverse = t.reciprocal(y);
      return [times(0.5, inverse), times(-0.25, t.multiply(inverse, t.square(inverse)))];
    }
    case Op.Square:
      return [times(2, p), plain(2)];
    default: {
      const square = t.square(y);
      return [times(-1, square), times(2, t.multiply(square, y))];
    }
  }
}

/** f_a, f_b, f_aa, f_ab, f_bb. */
function binaryLocal(
  code: number,
  t: Tape,
  y: Term,
  p: Term,
  q: Term,
): [Weight, Weight, Weight | null, Weight | null, Weight | null] {
  switch (code) {
    case Op.Add:
      return [ONE, ONE, null, null, null];
    case Op.Subtract:
      return [ONE, plain(-1), null, null, null];
    case Op.Multiply:
      return [times(1, q), times(1, p), null, ONE, null];
    case Op.Divide: {
      const inverse = t.reciprocal(q);
      const slope = t.multiply(y, inverse);
      const curve = t.multiply(slope, inverse);
      return [times(1, inverse), times(-1, slope), null, times(-1, t.square(inverse)), times(2, curve)];
    }
    default: {
      const part = (which: number) => times(1, t.part(y, which));
      return [part(1), part(2), part(3), part(4), part(5)];
    }
  }
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
