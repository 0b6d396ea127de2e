import { LaneProgram } from './lane-program.ts';
import { Recorder, type Term } from './recorder.ts';

/** Which of a stage's slopes and second derivatives can differ from zero, by place in their row-major matrices. */
export interface StagePattern {
  /** Of [f_x, f_u], states × (states + controls). */
  readonly slopes: Int32Array;
  /** Of W, (states + controls)², one of both halves is enough. */
  readonly hessian: Int32Array;
}

/**
 * What every stage of a chain computes from its slopes and Hessian alone, for many stages at once and without the
 * terms that are zero in all of them. With E = 1 − h/2 f_x:
 *
 *   D = [E⁻¹, h/2 E⁻¹ f_u],  V = [D; 0 1]ᵀ W [D; 0 1].
 */
export interface StagePrograms {
  /** Inputs: slopes; data: h. Outputs: D and the pivots of E, which is eliminated without row exchanges. */
  readonly middle: LaneProgram;
  /** Inputs: D; data: W. Outputs: the upper half of V, row by row. */
  readonly own: LaneProgram;
}

/** Programs of the last patterns asked for: problems of one kind follow each other. */
const known = new Map<string, StagePrograms>();
const MOST_KNOWN = 12;

export function stagePrograms(states: number, controls: number, pattern: StagePattern): StagePrograms {
  const key = `${states} ${controls} ${pattern.slopes.join()} ${pattern.hessian.join()}`;
  const found = known.get(key) ?? written(states, controls, pattern);
  known.delete(key);
  known.set(key, found);
  if (known.size > MOST_KNOWN) known.delete(known.keys().next().value as string);
  return found;
}

/** Any slopes and Hessians. */
export function densePattern(states: number, controls: number): StagePattern {
  const z = states + controls;
  const all = (size: number) => Int32Array.from({ length: size }, (_, i) => i);
  return { slopes: all(states * z), hessian: all(z * z) };
}

type Entry = Term | null;
type Matrix = Entry[][];

function written(n: number, m: number, { slopes, hessian }: StagePattern): StagePrograms {
  const z = n + m;
  const t = new Recorder();
  const inputs = Array.from({ length: n * z }, () => t.input());
  const half = t.scale(t.datum(), 0.5);
  const f = empty(n, z);
  for (const place of slopes) f[Math.floor(place / z)][place % z] = t.multiply(half, inputs[place]);
  const one = t.constant(1);
  const e = Array.from({ length: n }, (_, i) => {
    const negative = f[i].slice(0, n).map(v => v && t.scale(v, -1));
    negative[i] = f[i][i] ? t.subtract(one, f[i][i] as Term) : one;
    return negative;
  });
  const middle = Array.from({ length: n }, (_, i) => [
    ...Array.from({ length: n }, (_, j) => (i === j ? one : null)),
    ...f[i].slice(n),
  ]);
  const pivots = eliminate(t, e, middle);
  const zero = t.constant(0);
  const flat = (matrix: Matrix) => matrix.flat().map(v => v ?? zero);
  return {
    middle: new LaneProgram(t.record([...flat(middle), ...pivots])),
    own: ownProgram(n, z, middle, hessian),
  };
}

const empty = (rows: number, columns: number): Matrix =>
  Array.from({ length: rows }, () => Array.from({ length: columns }, () => null));

/** Gauss–Jordan on [e | right], pivots from the diagonal, the one that fills in least first. Returns the pivots. */
function eliminate(t: Recorder, e: Matrix, right: Matrix): Term[] {
  const n = e.length;
  const left = new Set(e.keys());
  const pivots: Term[] = [];
  const count = (entries: Entry[]) => entries.filter(v => v !== null).length;
  while (left.size > 0) {
    let c = -1;
    let fewest = Infinity;
    for (const i of left) {
      const fill = count(e.map((row, k) => (k === i ? null : row[i]))) * (count(e[i]) + count(right[i]));
      if (fill < fewest) {
        fewest = fill;
        c = i;
      }
    }
    left.delete(c);
    const pivot = e[c][c] as Term;
    pivots.push(pivot);
    const inverse = t.reciprocal(pivot);
    for (const row of [e[c], right[c]]) {
      for (const [j, v] of row.entries()) if (v !== null) row[j] = t.multiply(v, inverse);
    }
    for (let i = 0; i < n; i++) {
      const share = e[i][c];
      if (i === c || share === null) continue;
      for (const matrix of [e, right]) {
        for (const [j, v] of matrix[c].entries()) {
          if (v === null || (matrix === e && !left.has(j))) continue;
          const less = t.multiply(share, v);
          const was = matrix[i][j];
          matrix[i][j] = was === null ? t.scale(less, -1) : t.subtract(was, less);
        }
      }
      e[i][c] = null;
    }
  }
  return pivots;
}

/** V = Dᵀ W_xx D + Dᵀ [0, W_xu] + [0, W_xu]ᵀ D + W_uu */
function ownProgram(n: number, z: number, pattern: Matrix, hessian: Int32Array): LaneProgram {
  const t = new Recorder();
  const inputs = Array.from({ length: n * z }, () => t.input());
  const data = Array.from({ length: z * z }, () => t.datum());
  const w = empty(z, z);
  for (const place of hessian) {
    const [i, j] = [Math.floor(place / z), place % z];
    w[i][j] ??= data[place];
    w[j][i] = w[i][j];
  }
  const d = pattern.map((row, i) => row.map((v, j) => v && inputs[i * z + j]));
  const sum = (terms: readonly Term[]): Entry => {
    const [first, second, ...more] = terms;
    return second === undefined ? (first ?? null) : t.add(first, second, ...more);
  };
  const products = (a: readonly Entry[], b: readonly Entry[]) =>
    a.flatMap((v, l) => {
      const other = b[l];
      return v !== null && other !== null ? [t.multiply(v, other)] : [];
    });
  const column = (matrix: Matrix, j: number) => matrix.map(row => row[j]);
  // W_xx D, and with the controls' columns W_x (y, u) whole.
  const product = Array.from({ length: n }, (_, l) =>
    Array.from({ length: z }, (_, j) => {
      const terms = products(w[l].slice(0, n), column(d, j));
      const direct = j >= n ? w[l][j] : null;
      return sum(direct ? [...terms, direct] : terms);
    }),
  );
  const zero = t.constant(0);
  const own: Term[] = [];
  for (let i = 0; i < z; i++) {
    for (let j = i; j < z; j++) {
      const terms = products(column(d, i), column(product, j));
      // [0, W_xu]ᵀ D for a control's row, and W_uu.
      if (i >= n)
        terms.push(...products(w[i].slice(0, n), column(d, j)), ...(w[i][j] ? [w[i][j] as Term] : []));
      own.push(sum(terms) ?? zero);
    }
  }
  return new LaneProgram(t.record(own));
}
