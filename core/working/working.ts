import type { Sentence } from '../language/index.ts';

/**
 * How a number came about, as data: shown to a person, exported, and checked by a test that evaluates
 * `formula` with `inputs` and compares it with `result`.
 */
export interface Working {
  /** Stable key, for example `shape.radius`. */
  readonly key: string;
  /** What the reading is called on screen. */
  readonly title: Sentence;
  /** Symbol of the result in TeX, for example `R`. */
  readonly symbol: string;
  /**
   * The formula as a mathjs expression in the names of `inputs`, SI units and radians; empty for a number that
   * is solved. Its TeX is made from it (`workingTex`).
   */
  readonly formula: string;
  /** TeX set by hand, only where the formula's text would not read well; `texReason` says why. */
  readonly tex?: string;
  readonly texReason?: TexReason;
  /** What a solved number was solved from. */
  readonly solved?: Balance;
  readonly inputs: readonly WorkingInput[];
  readonly result: WorkingValue;
  /** Steps that are not a closed formula are told in words. */
  readonly note?: Sentence | readonly Sentence[];
  readonly source: Sentence;
  readonly status: SourceStatus;
}

/**
 * The balance a number was solved from: two sides that the solution makes equal, as expressions in the names of
 * the working's inputs and, where the working has no formula, of its result.
 */
export interface Balance {
  /** What is balanced, in words. */
  readonly of: Sentence;
  /** How it was solved, in words. */
  readonly by: Sentence;
  readonly left: string;
  readonly right: string;
  /** What the result is called in the sides, where the working has no formula for it. */
  readonly name?: string;
  /** Unit of both sides. */
  readonly unit: string;
  /** How far apart the sides may be left, as a share of the larger: what the method is good for. */
  readonly within: number;
}

export interface WorkingInput extends WorkingValue {
  /** Name used in `formula`. */
  readonly name: string;
  /** TeX symbol. */
  readonly symbol: string;
  readonly meaning: Sentence;
  /** Where it came from: a field of the file or the key of another working as it is, anything else in words. */
  readonly from?: string | Sentence;
}

export interface WorkingValue {
  /** SI value as used in the formula. */
  readonly value: number;
  /** SI unit, for example `m`, `rad`, `N*m^2`, `1`. */
  readonly unit: string;
}

/** Why an equation is set by hand: one Σ stands for the terms that the formula's text writes out. */
export type TexReason = 'sum';

/** How well a source is established; a status is never upgraded. */
export type SourceStatus = 'seen' | 'from memory' | 'derived' | 'common practice' | 'definition';
