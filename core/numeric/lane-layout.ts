/**
 * How a recording is laid out to be run over lanes of points: which operations are joined into one step, and where
 * each result stands.
 */

import { isBinary, Op, type Recording } from './tape-operation.ts';

/** Points taken at once: as many as let all places in use stay near the processor. */
export const LANES = 32;

/** Sums of products in one go, beside the tape's own operations. */
export const Joined = {
  /** x + p q, x − p q, p q − x, x + number · p */
  Plus: 20,
  Minus: 21,
  Less: 22,
  Scaled: 23,
} as const;

/** A step of a program: operation i of the recording, its operands −1 where it has none. */
export interface Step {
  readonly code: number;
  readonly i: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly number: number;
}

/** The recording's operations in order, products joined to the only sum that wants them. */
export function joined({ code, a, b, number, outputs }: Recording): Step[] {
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
export class Places {
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
