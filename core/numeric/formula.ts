import { Derivatives } from './derivatives.ts';
import { LaneProgram, type Rows } from './lane-program.ts';
import { Op, type Recording, type TwoArgumentFunction } from './tape-operation.ts';

/**
 * A formula and its exact first and second derivatives, at one point or at many. Evaluations share the work space: one
 * at a time. Nothing is checked: outside an operation's domain the outputs are NaN or infinite.
 */
export class Formula {
  readonly inputCount: number;
  readonly dataCount: number;
  readonly #recording: Recording;
  readonly #value: Float64Array;
  readonly #six = new Float64Array(6);
  /** Operations that compute, in order. */
  readonly #computed: Int32Array;
  /** Made when first asked for. */
  #lanes: LaneProgram | null = null;
  readonly #derivatives = new Map<string, Derivatives>();

  constructor(recording: Recording) {
    const { code, number, inputCount, dataCount } = recording;
    this.#recording = recording;
    this.inputCount = inputCount;
    this.dataCount = dataCount;
    this.#value = new Float64Array(code.length);
    const computed: number[] = [];
    for (let i = 0; i < code.length; i++) {
      if (code[i] === Op.Constant) this.#value[i] = number[i];
      if (code[i] > Op.Constant) computed.push(i);
    }
    this.#computed = Int32Array.from(computed);
  }

  get outputCount(): number {
    return this.#recording.outputs.length;
  }

  /** Writes the outputs. `inputs` may be longer than needed; the data are read from `data[dataAt]` on. */
  values(inputs: Float64Array, data: Float64Array, dataAt: number, out: Float64Array): void {
    const { code, a, b, number, externals, outputs } = this.#recording;
    const computed = this.#computed;
    const v = this.#value;
    for (let i = 0; i < code.length; i++) {
      if (code[i] === Op.Input) v[i] = inputs[a[i]];
      else if (code[i] === Op.Datum) v[i] = data[dataAt + a[i]];
    }
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
          (externals[i] as TwoArgumentFunction)(p, q, this.#six);
          v[i] = this.#six[0];
          break;
      }
    }
    for (let k = 0; k < outputs.length; k++) out[k] = v[outputs[k]];
  }

  /** Writes the outputs of `count` points, one a row of each. */
  valuesOver(count: number, inputs: Rows, data: Rows, out: Rows): void {
    this.#lanes ??= new LaneProgram(this.#recording);
    const output = Int32Array.from(this.#recording.outputs, (_, k) => k);
    this.#lanes.run(
      count,
      inputs,
      [{ ...data, columns: this.dataCount }],
      [{ rows: out, output, column: output }],
    );
  }

  /** Derivatives of the outputs from number `from` to before `to`, to be asked at many points. */
  derivativesOf(from: number, to: number, withData = false): Derivatives {
    const key = `${from} ${to} ${withData}`;
    const known = this.#derivatives.get(key);
    if (known) return known;
    const of = { ...this.#recording, outputs: this.#recording.outputs.slice(from, to) };
    const made = new Derivatives(of, withData);
    this.#derivatives.set(key, made);
    return made;
  }
}
