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
  /** A derivative that an external function wrote: the number says which of its six. */
  Part: 16,
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
