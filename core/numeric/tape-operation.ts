/** What a place on a tape does; the binary ones stand together. */
export const Op = {
  Input: 0,
  Datum: 1,
  Constant: 2,
  Add: 3,
  Subtract: 4,
  Multiply: 5,
  Divide: 6,
  External: 7,
  Scale: 8,
  Shift: 9,
  Sine: 10,
  Cosine: 11,
  Tanh: 12,
  Root: 13,
  Square: 14,
  Reciprocal: 15,
} as const;

export function isBinary(code: number): boolean {
  return code >= Op.Add && code <= Op.External;
}

/** A function of two arguments that writes [f, f_a, f_b, f_aa, f_ab, f_bb] into `out`. */
export type TwoArgumentFunction = (a: number, b: number, out: Float64Array) => void;

/** A recorded formula: an operation a place, its operands' places, and its number (a factor, a summand). */
export interface Recording {
  readonly code: Uint8Array;
  /** First operand; of inputs and data their number. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly number: Float64Array;
  readonly externals: readonly (TwoArgumentFunction | null)[];
  readonly outputs: Int32Array;
  readonly inputCount: number;
  readonly dataCount: number;
}

/** Whether an operation can bend, given which operands the inputs reach. */
export function bends(code: number, reachA: boolean, reachB: boolean): boolean {
  switch (code) {
    case Op.Multiply:
      return reachA && reachB;
    case Op.Divide:
      return reachB;
    case Op.External:
      return reachA || reachB;
    default:
      return reachA && code >= Op.Sine;
  }
}

/** Writes those of an operation's derivatives that never change, f_a at `at + 1` to f_bb at `at + 5`. */
export function constantDerivatives(code: number, number: number, local: Float64Array, at: number): void {
  if (code === Op.Add || code === Op.Subtract || code === Op.Shift) local[at + 1] = 1;
  if (code === Op.Scale) local[at + 1] = number;
  if (code === Op.Add) local[at + 2] = 1;
  if (code === Op.Subtract) local[at + 2] = -1;
  if (code === Op.Multiply) local[at + 4] = 1;
  if (code === Op.Square) local[at + 3] = 2;
}
