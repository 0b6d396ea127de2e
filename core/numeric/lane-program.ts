import { Joined, joined, LANES, Places } from './lane-layout.ts';
import { Op, type Recording, type TwoArgumentFunction } from './tape-operation.ts';

/** Where rows of numbers come from or go to, one row a point. */
export interface Rows {
  readonly values: Float64Array;
  /** Where the first row begins. */
  readonly at: number;
  /** From one row to the next. */
  readonly width: number;
}

/**
 * Runs a recording at many points, one operation at a time over a handful of them: what an interpreter spends on
 * finding its next operation is spent once for all of them. Results that are no longer needed give up their place.
 */
export class LaneProgram {
  readonly #code: Uint8Array;
  /** Result and operands, as places in `#values`. */
  readonly #to: Int32Array;
  readonly #a: Int32Array;
  readonly #b: Int32Array;
  readonly #c: Int32Array;
  readonly #number: Float64Array;
  readonly #functions: readonly (TwoArgumentFunction | null)[];
  /** Of each external function where its six results go, −1 for those nobody asks for. */
  readonly #six: Int32Array;
  readonly #values: Float64Array;
  readonly #inputs: Int32Array;
  readonly #data: Int32Array;
  readonly #outputs: Int32Array;
  readonly #written = new Float64Array(6);

  constructor(recording: Recording) {
    const steps = joined(recording);
    const places = new Places(recording, steps);
    const { code, number, externals, outputs } = recording;
    this.#code = Uint8Array.from(steps, ({ code: c }) => c);
    this.#to = Int32Array.from(steps, (_, at) => places.to[at]);
    this.#a = Int32Array.from(steps, ({ a }) => (a < 0 ? 0 : places.of[a]));
    this.#b = Int32Array.from(steps, ({ b }) => (b < 0 ? 0 : places.of[b]));
    this.#c = Int32Array.from(steps, ({ c }) => (c < 0 ? 0 : places.of[c]));
    this.#number = Float64Array.from(steps, step => step.number);
    this.#functions = steps.map(({ i }) => externals[i]);
    this.#six = places.six;
    this.#values = new Float64Array(places.size * LANES);
    for (let i = 0; i < code.length; i++) {
      if (code[i] === Op.Constant && places.of[i] >= 0)
        this.#values.fill(number[i], places.of[i], places.of[i] + LANES);
    }
    this.#inputs = places.inputs;
    this.#data = places.data;
    this.#outputs = Int32Array.from(outputs, i => places.of[i]);
  }

  /**
   * Evaluates `count` points. Inputs and data are read from the first columns of their rows; `data` may be of several
   * kinds, the columns of the first before those of the next. Each sink takes some outputs into columns of its rows.
   */
  run(
    count: number,
    inputs: Rows,
    data: readonly (Rows & { readonly columns: number })[],
    sinks: readonly { readonly rows: Rows; readonly output: Int32Array; readonly column: Int32Array }[],
  ): void {
    const v = this.#values;
    for (let first = 0; first < count; first += LANES) {
      const lanes = Math.min(LANES, count - first);
      gather(v, this.#inputs, 0, this.#inputs.length, inputs, first, lanes);
      let from = 0;
      for (const rows of data) {
        gather(v, this.#data, from, rows.columns, rows, first, lanes);
        from += rows.columns;
      }
      this.#compute(lanes);
      for (const { rows, output, column } of sinks) {
        const { values, width } = rows;
        const start = rows.at + first * width;
        for (let k = 0; k < output.length; k++) {
          const place = this.#outputs[output[k]];
          let to = start + column[k];
          for (let s = 0; s < lanes; s++, to += width) values[to] = v[place + s];
        }
      }
    }
  }

  #compute(lanes: number): void {
    const v = this.#values;
    const codes = this.#code;
    const tos = this.#to;
    const as = this.#a;
    const bs = this.#b;
    const cs = this.#c;
    const numbers = this.#number;
    const filled = Math.ceil(lanes / 4) * 4;
    for (let at = 0; at < codes.length; at++) {
      let to = tos[at];
      let a = as[at];
      let b = bs[at];
      let c = cs[at];
      const number = numbers[at];
      const end = to + filled;
      switch (codes[at]) {
        case Joined.Plus:
          for (; to < end; to += 4, a += 4, b += 4, c += 4) {
            v[to] = v[c] + v[a] * v[b];
            v[to + 1] = v[c + 1] + v[a + 1] * v[b + 1];
            v[to + 2] = v[c + 2] + v[a + 2] * v[b + 2];
            v[to + 3] = v[c + 3] + v[a + 3] * v[b + 3];
          }
          break;
        case Joined.Minus:
          for (; to < end; to += 4, a += 4, b += 4, c += 4) {
            v[to] = v[c] - v[a] * v[b];
            v[to + 1] = v[c + 1] - v[a + 1] * v[b + 1];
            v[to + 2] = v[c + 2] - v[a + 2] * v[b + 2];
            v[to + 3] = v[c + 3] - v[a + 3] * v[b + 3];
          }
          break;
        case Joined.Less:
          for (; to < end; to += 4, a += 4, b += 4, c += 4) {
            v[to] = v[a] * v[b] - v[c];
            v[to + 1] = v[a + 1] * v[b + 1] - v[c + 1];
            v[to + 2] = v[a + 2] * v[b + 2] - v[c + 2];
            v[to + 3] = v[a + 3] * v[b + 3] - v[c + 3];
          }
          break;
        case Joined.Scaled:
          for (; to < end; to += 4, a += 4, c += 4) {
            v[to] = v[c] + number * v[a];
            v[to + 1] = v[c + 1] + number * v[a + 1];
            v[to + 2] = v[c + 2] + number * v[a + 2];
            v[to + 3] = v[c + 3] + number * v[a + 3];
          }
          break;
        case Op.Add:
          for (; to < end; to += 4, a += 4, b += 4) {
            v[to] = v[a] + v[b];
            v[to + 1] = v[a + 1] + v[b + 1];
            v[to + 2] = v[a + 2] + v[b + 2];
            v[to + 3] = v[a + 3] + v[b + 3];
          }
          break;
        case Op.Subtract:
          for (; to < end; to += 4, a += 4, b += 4) {
            v[to] = v[a] - v[b];
            v[to + 1] = v[a + 1] - v[b + 1];
            v[to + 2] = v[a + 2] - v[b + 2];
            v[to + 3] = v[a + 3] - v[b + 3];
          }
          break;
        case Op.Multiply:
          for (; to < end; to += 4, a += 4, b += 4) {
            v[to] = v[a] * v[b];
            v[to + 1] = v[a + 1] * v[b + 1];
            v[to + 2] = v[a + 2] * v[b + 2];
            v[to + 3] = v[a + 3] * v[b + 3];
          }
          break;
        case Op.Divide:
          for (; to < end; to += 4, a += 4, b += 4) {
            v[to] = v[a] / v[b];
            v[to + 1] = v[a + 1] / v[b + 1];
            v[to + 2] = v[a + 2] / v[b + 2];
            v[to + 3] = v[a + 3] / v[b + 3];
          }
          break;
        case Op.Scale:
          for (; to < end; to += 4, a += 4) {
            v[to] = number * v[a];
            v[to + 1] = number * v[a + 1];
            v[to + 2] = number * v[a + 2];
            v[to + 3] = number * v[a + 3];
          }
          break;
        case Op.Shift:
          for (; to < end; to += 4, a += 4) {
            v[to] = v[a] + number;
            v[to + 1] = v[a + 1] + number;
            v[to + 2] = v[a + 2] + number;
            v[to + 3] = v[a + 3] + number;
          }
          break;
        case Op.Square:
          for (; to < end; to += 4, a += 4) {
            v[to] = v[a] * v[a];
            v[to + 1] = v[a + 1] * v[a + 1];
            v[to + 2] = v[a + 2] * v[a + 2];
            v[to + 3] = v[a + 3] * v[a + 3];
          }
          break;
        case Op.Reciprocal:
          for (; to < end; to += 4, a += 4) {
            v[to] = 1 / v[a];
            v[to + 1] = 1 / v[a + 1];
            v[to + 2] = 1 / v[a + 2];
            v[to + 3] = 1 / v[a + 3];
          }
          break;
        case Op.Sine:
          for (let s = 0; s < lanes; s++) v[to + s] = Math.sin(v[a + s]);
          break;
        case Op.Cosine:
          for (let s = 0; s < lanes; s++) v[to + s] = Math.cos(v[a + s]);
          break;
        case Op.Tanh:
          for (let s = 0; s < lanes; s++) v[to + s] = Math.tanh(v[a + s]);
          break;
        case Op.Root:
          for (let s = 0; s < lanes; s++) v[to + s] = Math.sqrt(v[a + s]);
          break;
        default:
          this.#callExternal(at, lanes);
      }
    }
  }

  #callExternal(at: number, lanes: number): void {
    const v = this.#values;
    const f = this.#functions[at] as TwoArgumentFunction;
    const a = this.#a[at];
    const b = this.#b[at];
    const six = this.#six;
    const written = this.#written;
    for (let s = 0; s < lanes; s++) {
      f(v[a + s], v[b + s], written);
      for (let k = 0; k < 6; k++) {
        const to = six[6 * at + k];
        if (to >= 0) v[to + s] = written[k];
      }
    }
  }
}

function gather(
  v: Float64Array,
  places: Int32Array,
  from: number,
  columns: number,
  { values, at, width }: Rows,
  first: number,
  lanes: number,
): void {
  for (let i = 0; i < columns; i++) {
    const place = places[from + i];
    if (place < 0) continue;
    let source = at + first * width + i;
    for (let s = 0; s < lanes; s++, source += width) v[place + s] = values[source];
  }
}
