import {
  bends,
  constantDerivatives,
  isBinary,
  Op,
  type Recording,
  type TwoArgumentFunction,
} from './tape-operation.ts';

/**
 * A formula with exact first and second derivatives. The tape runs forward with the slopes of every operation to
 * all inputs, and backward with one adjoint an operation; the Hessian is the sum over the operations of
 *
 *   adjoint · (f_aa a'a'ᵀ + f_ab (a'b'ᵀ + b'a'ᵀ) + f_bb b'b'ᵀ),  a', b' the slopes of the operands,
 *
 * in which only those that are not linear take part, each with the few inputs that reach it (derived by applying
 * the chain rule twice; the two sweeps as in Griewank & Walther, Evaluating Derivatives, 2nd ed. 2008, ch. 3,
 * from memory). Evaluations share the work space: one at a time.
 */
export class Formula {
  readonly inputCount: number;
  readonly dataCount: number;
  readonly #code: Uint8Array;
  readonly #a: Int32Array;
  readonly #b: Int32Array;
  readonly #number: Float64Array;
  readonly #externals: readonly (TwoArgumentFunction | null)[];
  readonly #outputs: Int32Array;
  readonly #value: Float64Array;
  /** Operations × inputs; zero wherever an input does not reach the operation. */
  readonly #slope: Float64Array;
  readonly #adjoint: Float64Array;
  /** The inputs that reach operation i, ascending: `#reach` from `#reachAt[i]` to before `#reachAt[i + 1]`. */
  readonly #reach: Int32Array;
  readonly #reachAt: Int32Array;
  /** f_a, f_b, f_aa, f_ab, f_bb of each operation, with a gap: six an operation, as externals write them. */
  readonly #local: Float64Array;
  readonly #six = new Float64Array(6);
  /** Operations that compute, in order. */
  readonly #computed: Int32Array;
  /** 1 where the operation bends: its Hessian to the inputs need not vanish. */
  readonly #bent: Uint8Array;

  constructor({ code, a, b, number, externals, outputs, inputCount, dataCount }: Recording) {
    const size = code.length;
    this.#code = code;
    this.#a = a;
    this.#b = b;
    this.#number = number;
    this.#externals = externals;
    this.#outputs = outputs;
    this.inputCount = inputCount;
    this.dataCount = dataCount;
    this.#value = new Float64Array(size);
    this.#slope = new Float64Array(size * inputCount);
    this.#adjoint = new Float64Array(size);
    this.#local = new Float64Array(6 * size);
    this.#bent = new Uint8Array(size);
    const reach: number[][] = [];
    const computed: number[] = [];
    for (let i = 0; i < size; i++) {
      if (code[i] === Op.Constant) this.#value[i] = number[i];
      if (code[i] === Op.Input) this.#slope[i * inputCount + a[i]] = 1;
      reach.push(code[i] === Op.Input ? [a[i]] : []);
      if (code[i] <= Op.Constant) continue;
      computed.push(i);
      const both = isBinary(code[i]) ? [...reach[a[i]], ...reach[b[i]]] : reach[a[i]];
      reach[i] = [...new Set(both)].sort((p, q) => p - q);
      this.#bent[i] = bends(code[i], reach[a[i]].length > 0, reach[b[i]].length > 0) ? 1 : 0;
      constantDerivatives(code[i], number[i], this.#local, 6 * i);
    }
    this.#computed = Int32Array.from(computed);
    this.#reach = Int32Array.from(reach.flat());
    this.#reachAt = new Int32Array(size + 1);
    for (let i = 0; i < size; i++) this.#reachAt[i + 1] = this.#reachAt[i] + reach[i].length;
  }

  get outputCount(): number {
    return this.#outputs.length;
  }

  /**
   * Writes the outputs. `inputs` may be longer than needed; the data are read from `data[dataAt]` on. Nothing is
   * checked: outside an operation's domain the outputs are NaN or infinite.
   */
  values(inputs: Float64Array, data: Float64Array, dataAt: number, out: Float64Array): void {
    this.#read(inputs, data, dataAt);
    const code = this.#code;
    const a = this.#a;
    const b = this.#b;
    const number = this.#number;
    const computed = this.#computed;
    const v = this.#value;
    for (let at = 0; at < computed.length; at++) {
      const i = computed[at];
      const p = v[a[i]];
      const q = v[b[i]];
      switch (code[i]) {
        case Op.Add:
          v[i] = p + q;
          break;
        case Op.Subtract:
          v[i] = p - q;
          break;
        case Op.Multiply:
          v[i] = p * q;
          break;
        case Op.Divide:
          v[i] = p / q;
          break;
        case Op.Scale:
          v[i] = number[i] * p;
          break;
        case Op.Shift:
          v[i] = p + number[i];
          break;
        case Op.Sine:
          v[i] = Math.sin(p);
          break;
        case Op.Cosine:
          v[i] = Math.cos(p);
          break;
        case Op.Tanh:
          v[i] = Math.tanh(p);
          break;
        case Op.Root:
          v[i] = Math.sqrt(p);
          break;
        case Op.Square:
          v[i] = p * p;
          break;
        case Op.Reciprocal:
          v[i] = 1 / p;
          break;
        case Op.External:
          (this.#externals[i] as TwoArgumentFunction)(p, q, this.#six);
          v[i] = this.#six[0];
          break;
      }
    }
    for (let k = 0; k < this.#outputs.length; k++) out[k] = v[this.#outputs[k]];
  }

  /**
   * Writes the outputs, their Jacobian (row-major, outputs × inputs), and of Σ weight·output the Hessian
   * (row-major, inputs × inputs, both halves) and the gradient to the data.
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
    this.#read(inputs, data, dataAt);
    this.#forward();
    const n = this.inputCount;
    const outputs = this.#outputs;
    const slope = this.#slope;
    const adjoint = this.#adjoint.fill(0);
    for (let k = 0; k < outputs.length; k++) {
      const i = outputs[k];
      out[k] = this.#value[i];
      adjoint[i] += weights[k];
      for (let j = 0; j < n; j++) jacobian[k * n + j] = slope[i * n + j];
    }
    for (let i = 0; i < n * n; i++) hessian[i] = 0;
    this.#backward(hessian, dataGradient !== undefined);
    for (let j = 1; j < n; j++) for (let k = 0; k < j; k++) hessian[k * n + j] = hessian[j * n + k];
    if (!dataGradient) return;
    dataGradient.fill(0, 0, this.dataCount);
    const code = this.#code;
    for (let i = 0; i < code.length; i++) if (code[i] === Op.Datum) dataGradient[this.#a[i]] += adjoint[i];
  }

  #read(inputs: Float64Array, data: Float64Array, dataAt: number): void {
    const code = this.#code;
    const a = this.#a;
    const v = this.#value;
    for (let i = 0; i < code.length; i++) {
      if (code[i] === Op.Input) v[i] = inputs[a[i]];
      else if (code[i] === Op.Datum) v[i] = data[dataAt + a[i]];
    }
  }

  /** Values, local derivatives and slopes of every operation. */
  #forward(): void {
    const n = this.inputCount;
    const code = this.#code;
    const a = this.#a;
    const b = this.#b;
    const number = this.#number;
    const computed = this.#computed;
    const local = this.#local;
    const reach = this.#reach;
    const reachAt = this.#reachAt;
    const v = this.#value;
    const d = this.#slope;
    for (let at = 0; at < computed.length; at++) {
      const i = computed[at];
      const c = 6 * i;
      const p = v[a[i]];
      const q = v[b[i]];
      switch (code[i]) {
        case Op.Add:
          v[i] = p + q;
          break;
        case Op.Subtract:
          v[i] = p - q;
          break;
        case Op.Multiply:
          v[i] = p * q;
          local[c + 1] = q;
          local[c + 2] = p;
          break;
        case Op.Divide: {
          const inverse = 1 / q;
          v[i] = p * inverse;
          local[c + 1] = inverse;
          local[c + 2] = -v[i] * inverse;
          local[c + 4] = -inverse * inverse;
          local[c + 5] = 2 * v[i] * inverse * inverse;
          break;
        }
        case Op.Scale:
          v[i] = number[i] * p;
          break;
        case Op.Shift:
          v[i] = p + number[i];
          break;
        case Op.Sine:
          v[i] = Math.sin(p);
          local[c + 1] = Math.cos(p);
          local[c + 3] = -v[i];
          break;
        case Op.Cosine:
          v[i] = Math.cos(p);
          local[c + 1] = -Math.sin(p);
          local[c + 3] = -v[i];
          break;
        case Op.Tanh: {
          v[i] = Math.tanh(p);
          const slope = 1 - v[i] * v[i];
          local[c + 1] = slope;
          local[c + 3] = -2 * v[i] * slope;
          break;
        }
        case Op.Root:
          v[i] = Math.sqrt(p);
          local[c + 1] = 0.5 / v[i];
          local[c + 3] = -0.25 / (v[i] * p);
          break;
        case Op.Square:
          v[i] = p * p;
          local[c + 1] = 2 * p;
          break;
        case Op.Reciprocal:
          v[i] = 1 / p;
          local[c + 1] = -v[i] * v[i];
          local[c + 3] = 2 * v[i] * v[i] * v[i];
          break;
        case Op.External: {
          const six = this.#six;
          (this.#externals[i] as TwoArgumentFunction)(p, q, six);
          v[i] = six[0];
          for (let k = 1; k < 6; k++) local[c + k] = six[k];
          break;
        }
      }
      const end = reachAt[i + 1];
      const rowP = a[i] * n;
      const rowI = i * n;
      const da = local[c + 1];
      if (code[i] <= Op.External) {
        const rowQ = b[i] * n;
        const db = local[c + 2];
        for (let r = reachAt[i]; r < end; r++) {
          const j = reach[r];
          d[rowI + j] = da * d[rowP + j] + db * d[rowQ + j];
        }
      } else {
        for (let r = reachAt[i]; r < end; r++) {
          const j = reach[r];
          d[rowI + j] = da * d[rowP + j];
        }
      }
    }
  }

  /** Adjoints, and the Hessian's lower half; adjoints of the data too where they are wanted. */
  #backward(hessian: Float64Array, withData: boolean): void {
    const n = this.inputCount;
    const code = this.#code;
    const a = this.#a;
    const b = this.#b;
    const computed = this.#computed;
    const local = this.#local;
    const bent = this.#bent;
    const reach = this.#reach;
    const reachAt = this.#reachAt;
    const d = this.#slope;
    const w = this.#adjoint;
    for (let at = computed.length - 1; at >= 0; at--) {
      const i = computed[at];
      const wi = w[i];
      const first = reachAt[i];
      const end = reachAt[i + 1];
      if (wi === 0 || (first === end && !withData)) continue;
      const c = 6 * i;
      const p = a[i];
      w[p] += local[c + 1] * wi;
      const rowP = p * n;
      if (code[i] <= Op.External) {
        const q = b[i];
        w[q] += local[c + 2] * wi;
        if (bent[i] === 0) continue;
        const rowQ = q * n;
        const aa = wi * local[c + 3];
        const ab = wi * local[c + 4];
        const bb = wi * local[c + 5];
        for (let r = first; r < end; r++) {
          const j = reach[r];
          const byP = aa * d[rowP + j] + ab * d[rowQ + j];
          const byQ = ab * d[rowP + j] + bb * d[rowQ + j];
          const row = j * n;
          for (let s = first; s <= r; s++) {
            const k = reach[s];
            hessian[row + k] += byP * d[rowP + k] + byQ * d[rowQ + k];
          }
        }
      } else if (bent[i] === 1) {
        const aa = wi * local[c + 3];
        for (let r = first; r < end; r++) {
          const j = reach[r];
          const byP = aa * d[rowP + j];
          const row = j * n;
          for (let s = first; s <= r; s++) {
            const k = reach[s];
            hessian[row + k] += byP * d[rowP + k];
          }
        }
      }
    }
  }
}
