import { isBinary, Op, type Recording, type TwoArgumentFunction } from './tape-operation.ts';

/** Points taken at once: as many as let all places in use stay near the processor. */
const LANES = 32;

/** Sums of products in one go, beside the tape's own operations. */
const Joined = {
  /** x + p q, x − p q, p q − x, x + number · p */
  Plus: 20,
  Minus: 21,
  Less: 22,
  Scaled: 23,
} as const;

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

/** A step of the program: operation i of the recording, its operands −1 where it has none. */
interface Step {
  readonly code: number;
  readonly i: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly number: number;
}

/** The recording's operations in order, products joined to the only sum that wants them. */
function joined({ code, a, b, number, outputs }: Recording): Step[] {
  const users = new Int32Array(code.length);
  for (let i = 0; i < code.length; i++) {
    if (code[i] <= Op.Constant) continue;
    users[a[i]]++;
    if (isBinary(code[i])) users[b[i]]++;
  }
  for (const i of outputs) users[i] += 2;
  const gone = new Uint8Array(code.length);
  const alone = (i: number, wanted: number) => code[i] === wanted && users[i] === 1;
  const steps: Step[] = [];
  for (let i = code.length - 1; i >= 0; i--) {
    if (code[i] <= Op.Constant || code[i] === Op.Part || gone[i]) continue;
    const [p, q] = [a[i], b[i]];
    const take = (joinedCode: number, product: number, c: number) => {
      gone[product] = 1;
      const scaled = code[product] === Op.Scale;
      const step = { code: joinedCode, i, a: a[product], b: scaled ? -1 : b[product], c };
      steps.push({ ...step, number: number[product] });
    };
    if (code[i] === Op.Add && p !== q && alone(q, Op.Multiply)) take(Joined.Plus, q, p);
    else if (code[i] === Op.Add && p !== q && alone(p, Op.Multiply)) take(Joined.Plus, p, q);
    else if (code[i] === Op.Add && p !== q && alone(q, Op.Scale)) take(Joined.Scaled, q, p);
    else if (code[i] === Op.Add && p !== q && alone(p, Op.Scale)) take(Joined.Scaled, p, q);
    else if (code[i] === Op.Subtract && alone(q, Op.Multiply)) take(Joined.Minus, q, p);
    else if (code[i] === Op.Subtract && alone(p, Op.Multiply)) take(Joined.Less, p, q);
    else steps.push({ code: code[i], i, a: p, b: isBinary(code[i]) ? q : -1, c: -1, number: number[i] });
  }
  return steps.reverse();
}

/** Where each operation's result stands: a place is given on once its last reader is past. */
class Places {
  /** Of each operation of the recording, −1 where nothing needs it. */
  readonly of: Int32Array;
  readonly to: Int32Array;
  readonly six: Int32Array;
  readonly inputs: Int32Array;
  readonly data: Int32Array;
  size = 0;
  readonly #free: number[] = [];

  constructor({ code, a, number, outputs, inputCount, dataCount }: Recording, steps: readonly Step[]) {
    const count = code.length;
    this.of = new Int32Array(count).fill(-1);
    this.to = new Int32Array(steps.length);
    this.six = new Int32Array(6 * steps.length).fill(-1);
    this.inputs = new Int32Array(inputCount).fill(-1);
    this.data = new Int32Array(dataCount).fill(-1);
    for (let i = 0; i < count; i++) {
      if (code[i] > Op.Constant) continue;
      this.of[i] = this.#take();
      if (code[i] === Op.Input) this.inputs[a[i]] = this.of[i];
      if (code[i] === Op.Datum) this.data[a[i]] = this.of[i];
    }
    const parts = new Map<number, number[]>();
    for (let i = 0; i < count; i++) {
      if (code[i] === Op.Part) parts.set(a[i], [...(parts.get(a[i]) ?? []), i]);
    }
    const last = new Int32Array(count).fill(-1);
    for (const [at, step] of steps.entries()) {
      for (const operand of [step.a, step.b, step.c]) if (operand >= 0) last[operand] = at;
    }
    for (let i = 0; i < count; i++) if (code[i] <= Op.Constant) last[i] = steps.length;
    for (const i of outputs) last[i] = steps.length;
    for (const [at, { i, a: p, b: q, c, code: kind }] of steps.entries()) {
      const results = [i, ...(kind === Op.External ? (parts.get(i) ?? []) : [])];
      for (const result of results) {
        this.of[result] = this.#take();
        if (kind === Op.External) this.six[6 * at + (result === i ? 0 : number[result])] = this.of[result];
      }
      this.to[at] = this.of[i];
      for (const operand of new Set([p, q, c])) {
        if (operand >= 0 && last[operand] === at) this.#free.push(this.of[operand]);
      }
      for (const result of results) if (last[result] < 0) this.#free.push(this.of[result]);
    }
  }

  #take(): number {
    return this.#free.pop() ?? LANES * this.size++;
  }
}
