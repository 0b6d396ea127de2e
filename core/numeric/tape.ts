/**
 * Exact first and second derivatives of a formula written once: operations are recorded on a tape, and each
 * evaluation runs the tape forward with tangents and backward with adjoints and their tangents (forward over
 * reverse; Griewank & Walther, Evaluating Derivatives, 2nd ed. 2008, ch. 3 and 5, from memory).
 */

/** A value on the tape, by its place. */
export type Term = number & { readonly tape: unique symbol };

/** A function of two arguments that writes [f, f_a, f_b, f_aa, f_ab, f_bb] into `out`. */
export type TwoArgumentFunction = (a: number, b: number, out: Float64Array) => void;

const Op = {
  Input: 0,
  Datum: 1,
  Constant: 2,
  Add: 3,
  Subtract: 4,
  Multiply: 5,
  Divide: 6,
  Scale: 7,
  Shift: 8,
  Sine: 9,
  Cosine: 10,
  Tanh: 11,
  Root: 12,
  Square: 13,
  Reciprocal: 14,
  External: 15,
} as const;

/** Records a formula. Inputs are differentiated twice, data once; both are numbered in the order of their calls. */
export class Tape {
  readonly #code: number[] = [];
  readonly #a: number[] = [];
  readonly #b: number[] = [];
  readonly #number: number[] = [];
  readonly #externals: (TwoArgumentFunction | null)[] = [];
  #inputs = 0;
  #data = 0;

  /** The next variable. */
  input(): Term {
    return this.#push(Op.Input, this.#inputs++);
  }

  /** The next value that is given with each evaluation but is no variable. */
  datum(): Term {
    return this.#push(Op.Datum, this.#data++);
  }

  constant(value: number): Term {
    return this.#push(Op.Constant, 0, 0, value);
  }

  add(a: Term, b: Term, ...more: Term[]): Term {
    return more.reduce((sum, term) => this.#push(Op.Add, sum, term), this.#push(Op.Add, a, b));
  }

  subtract(a: Term, b: Term): Term {
    return this.#push(Op.Subtract, a, b);
  }

  multiply(a: Term, b: Term, ...more: Term[]): Term {
    return more.reduce((sum, term) => this.#push(Op.Multiply, sum, term), this.#push(Op.Multiply, a, b));
  }

  divide(a: Term, b: Term): Term {
    return this.#push(Op.Divide, a, b);
  }

  /** factor · a */
  scale(a: Term, factor: number): Term {
    return this.#push(Op.Scale, a, 0, factor);
  }

  /** a + by */
  shift(a: Term, by: number): Term {
    return this.#push(Op.Shift, a, 0, by);
  }

  sine(a: Term): Term {
    return this.#push(Op.Sine, a);
  }

  cosine(a: Term): Term {
    return this.#push(Op.Cosine, a);
  }

  tanh(a: Term): Term {
    return this.#push(Op.Tanh, a);
  }

  squareRoot(a: Term): Term {
    return this.#push(Op.Root, a);
  }

  square(a: Term): Term {
    return this.#push(Op.Square, a);
  }

  reciprocal(a: Term): Term {
    return this.#push(Op.Reciprocal, a);
  }

  /** A function that is not a formula, such as a surface through solved points. */
  external(f: TwoArgumentFunction, a: Term, b: Term): Term {
    const term = this.#push(Op.External, a, b);
    this.#externals[term] = f;
    return term;
  }

  /** Closes the tape; `outputs` are what evaluations return, in this order. */
  compile(outputs: readonly Term[]): Formula {
    return new Formula(
      Uint8Array.from(this.#code),
      Int32Array.from(this.#a),
      Int32Array.from(this.#b),
      Float64Array.from(this.#number),
      this.#externals,
      Int32Array.from(outputs),
      this.#inputs,
      this.#data,
    );
  }

  #push(code: number, a: number, b = 0, number = 0): Term {
    this.#a.push(a);
    this.#b.push(b);
    this.#number.push(number);
    this.#externals.push(null);
    return (this.#code.push(code) - 1) as Term;
  }
}

/** A closed tape. Evaluations share its work space: one at a time. */
export class Formula {
  readonly #value: Float64Array;
  readonly #tangent: Float64Array;
  readonly #adjoint: Float64Array;
  readonly #adjointTangent: Float64Array;
  /** Tangents of a term are zero outside [from, to). */
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  /** First and second derivatives of the externals, six a term. */
  readonly #outer: Float64Array;
  readonly #six = new Float64Array(6);

  constructor(
    private readonly code: Uint8Array,
    private readonly a: Int32Array,
    private readonly b: Int32Array,
    private readonly number: Float64Array,
    private readonly externals: readonly (TwoArgumentFunction | null)[],
    private readonly outputs: Int32Array,
    readonly inputCount: number,
    readonly dataCount: number,
  ) {
    const size = code.length;
    this.#value = new Float64Array(size);
    this.#tangent = new Float64Array(size * inputCount);
    this.#adjoint = new Float64Array(size);
    this.#adjointTangent = new Float64Array(size * inputCount);
    this.#from = new Int32Array(size);
    this.#to = new Int32Array(size);
    this.#outer = new Float64Array(6 * size);
    for (let i = 0; i < size; i++) {
      if (code[i] === Op.Constant) this.#value[i] = number[i];
      if (code[i] === Op.Input) {
        this.#from[i] = a[i];
        this.#to[i] = a[i] + 1;
        this.#tangent[i * inputCount + a[i]] = 1;
      } else if (code[i] > Op.Constant) {
        const both = isBinary(code[i]) ? [a[i], b[i]] : [a[i]];
        const used = both.filter(k => this.#to[k] > this.#from[k]);
        if (used.length > 0) {
          this.#from[i] = Math.min(...used.map(k => this.#from[k]));
          this.#to[i] = Math.max(...used.map(k => this.#to[k]));
        }
      }
    }
  }

  get outputCount(): number {
    return this.outputs.length;
  }

  /** Writes the outputs. `inputs` and `data` may be longer than needed and start at an offset. */
  values(inputs: Float64Array, data: Float64Array, dataAt: number, out: Float64Array): void {
    this.#forward(inputs, data, dataAt, false);
    for (let k = 0; k < this.outputs.length; k++) out[k] = this.#value[this.outputs[k]];
  }

  /**
   * Writes the outputs, their Jacobian (row-major, outputs × inputs), and of Σ weight·output the Hessian
   * (row-major, inputs × inputs) and the gradient to the data.
   */
  derivatives(
    inputs: Float64Array,
    data: Float64Array,
    dataAt: number,
    weights: Float64Array,
    out: Float64Array,
    jacobian: Float64Array,
    hessian: Float64Array,
    dataGradient?: Float64Array,
  ): void {
    const { code, outputs, inputCount: n } = this;
    this.#forward(inputs, data, dataAt, true);
    const adjoint = this.#adjoint.fill(0);
    const adjointTangent = this.#adjointTangent.fill(0);
    const tangent = this.#tangent;
    for (let k = 0; k < outputs.length; k++) {
      const i = outputs[k];
      out[k] = this.#value[i];
      adjoint[i] += weights[k];
      for (let j = 0; j < n; j++) jacobian[k * n + j] = tangent[i * n + j];
    }
    this.#backward();
    for (let i = 0; i < code.length; i++) {
      if (code[i] === Op.Input) {
        const row = this.a[i] * n;
        for (let j = 0; j < n; j++) hessian[row + j] = adjointTangent[i * n + j];
      } else if (dataGradient && code[i] === Op.Datum) dataGradient[this.a[i]] = adjoint[i];
    }
  }

  #forward(inputs: Float64Array, data: Float64Array, dataAt: number, withTangents: boolean): void {
    const { code, a, b, number, inputCount: n } = this;
    const v = this.#value;
    const d = this.#tangent;
    for (let i = 0; i < code.length; i++) {
      const p = a[i];
      const q = b[i];
      // Derivatives to the one or two operands.
      let da = 0;
      let db = 0;
      switch (code[i]) {
        case Op.Input:
          v[i] = inputs[p];
          continue;
        case Op.Datum:
          v[i] = data[dataAt + p];
          continue;
        case Op.Constant:
          continue;
        case Op.Add:
          v[i] = v[p] + v[q];
          da = 1;
          db = 1;
          break;
        case Op.Subtract:
          v[i] = v[p] - v[q];
          da = 1;
          db = -1;
          break;
        case Op.Multiply:
          v[i] = v[p] * v[q];
          da = v[q];
          db = v[p];
          break;
        case Op.Divide:
          da = 1 / v[q];
          v[i] = v[p] * da;
          db = -v[i] * da;
          break;
        case Op.Scale:
          da = number[i];
          v[i] = da * v[p];
          break;
        case Op.Shift:
          v[i] = v[p] + number[i];
          da = 1;
          break;
        case Op.Sine:
          v[i] = Math.sin(v[p]);
          da = Math.cos(v[p]);
          break;
        case Op.Cosine:
          v[i] = Math.cos(v[p]);
          da = -Math.sin(v[p]);
          break;
        case Op.Tanh:
          v[i] = Math.tanh(v[p]);
          da = 1 - v[i] * v[i];
          break;
        case Op.Root:
          v[i] = Math.sqrt(v[p]);
          da = 0.5 / v[i];
          break;
        case Op.Square:
          v[i] = v[p] * v[p];
          da = 2 * v[p];
          break;
        case Op.Reciprocal:
          v[i] = 1 / v[p];
          da = -v[i] * v[i];
          break;
        case Op.External: {
          const six = this.#six;
          (this.externals[i] as TwoArgumentFunction)(v[p], v[q], six);
          this.#outer.set(six, 6 * i);
          v[i] = six[0];
          da = six[1];
          db = six[2];
          break;
        }
      }
      if (!withTangents) continue;
      const to = this.#to[i];
      if (db !== 0) {
        for (let j = this.#from[i]; j < to; j++) d[i * n + j] = da * d[p * n + j] + db * d[q * n + j];
      } else {
        for (let j = this.#from[i]; j < to; j++) d[i * n + j] = da * d[p * n + j];
      }
    }
  }

  #backward(): void {
    const { code, a, b, number, inputCount: n } = this;
    const v = this.#value;
    const d = this.#tangent;
    const w = this.#adjoint;
    const wd = this.#adjointTangent;
    for (let i = code.length - 1; i >= 0; i--) {
      if (code[i] <= Op.Constant) continue;
      const p = a[i];
      const q = b[i];
      const wi = w[i];
      // First and second derivatives of this operation.
      let da = 0;
      let db = 0;
      let aa = 0;
      let ab = 0;
      let bb = 0;
      switch (code[i]) {
        case Op.Add:
          da = 1;
          db = 1;
          break;
        case Op.Subtract:
          da = 1;
          db = -1;
          break;
        case Op.Multiply:
          da = v[q];
          db = v[p];
          ab = 1;
          break;
        case Op.Divide:
          da = 1 / v[q];
          db = -v[i] * da;
          ab = -da * da;
          bb = -2 * db * da;
          break;
        case Op.Scale:
          da = number[i];
          break;
        case Op.Shift:
          da = 1;
          break;
        case Op.Sine:
          da = Math.cos(v[p]);
          aa = -v[i];
          break;
        case Op.Cosine:
          da = -Math.sin(v[p]);
          aa = -v[i];
          break;
        case Op.Tanh:
          da = 1 - v[i] * v[i];
          aa = -2 * v[i] * da;
          break;
        case Op.Root:
          da = 0.5 / v[i];
          aa = (-0.5 * da) / v[p];
          break;
        case Op.Square:
          da = 2 * v[p];
          aa = 2;
          break;
        case Op.Reciprocal:
          da = -v[i] * v[i];
          aa = -2 * da * v[i];
          break;
        case Op.External: {
          const at = 6 * i;
          da = this.#outer[at + 1];
          db = this.#outer[at + 2];
          aa = this.#outer[at + 3];
          ab = this.#outer[at + 4];
          bb = this.#outer[at + 5];
          break;
        }
      }
      w[p] += da * wi;
      const pn = p * n;
      const qn = q * n;
      const rn = i * n;
      if (isBinary(code[i])) {
        w[q] += db * wi;
        const waa = aa * wi;
        const wab = ab * wi;
        const wbb = bb * wi;
        if (waa === 0 && wab === 0 && wbb === 0) {
          for (let j = 0; j < n; j++) {
            const t = wd[rn + j];
            wd[pn + j] += da * t;
            wd[qn + j] += db * t;
          }
        } else {
          for (let j = 0; j < n; j++) {
            const t = wd[rn + j];
            const ta = d[pn + j];
            const tb = d[qn + j];
            wd[pn + j] += da * t + waa * ta + wab * tb;
            wd[qn + j] += db * t + wab * ta + wbb * tb;
          }
        }
      } else {
        const waa = aa * wi;
        for (let j = 0; j < n; j++) wd[pn + j] += da * wd[rn + j] + waa * d[pn + j];
      }
    }
  }
}

function isBinary(code: number): boolean {
  return (code >= Op.Add && code <= Op.Divide) || code === Op.External;
}
