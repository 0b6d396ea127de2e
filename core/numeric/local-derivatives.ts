/**
 * What the operations of a recording are to their operands: slopes and curvatures of each kind, as terms on a tape.
 */

import type { Recorder, Term } from './recorder.ts';
import { isBinary, Op, type Recording, type TwoArgumentFunction } from './tape-operation.ts';

/** A factor times a term, or the factor alone. */
export interface Weight {
  readonly factor: number;
  readonly term: Term | null;
}

export const ONE: Weight = { factor: 1, term: null };

/** Slopes to the operands, and curvatures between them: [operand, slope], [operand, operand, curvature]. */
export interface Local {
  readonly slopes: readonly (readonly [number, Weight])[];
  readonly bends: readonly (readonly [number, number, Weight])[];
}

/** Sums and products of weights, written on a tape. */
export class ChainRule {
  constructor(private readonly t: Recorder) {}

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
export function replay(of: Recording, t: Recorder, inputs: readonly Term[], data: readonly Term[]): Term[] {
  const values: Term[] = [];
  for (let i = 0; i < of.code.length; i++) values.push(replayed(of, t, inputs, data, values, i));
  return values;
}

function replayed(
  { code, a, b, number, externals }: Recording,
  t: Recorder,
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
export const times = (factor: number, term: Term): Weight => ({ factor, term });

/** The slopes and curvatures of operation i; operands that are the same are one. */
export function localsAt(
  of: Recording,
  t: Recorder,
  chain: ChainRule,
  values: readonly Term[],
  i: number,
): Local {
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
function unaryLocal(code: number, t: Recorder, y: Term, p: Term, number: number): [Weight, Weight | null] {
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
  t: Recorder,
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
