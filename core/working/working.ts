/**
 * How a number came about, as data: shown to a person, exported, and checked by a test that evaluates
 * `formula` with `inputs` and compares it with `result`.
 */
export interface Working {
  /** Stable key, for example `shape.radius`. */
  readonly key: string;
  /** What the reading is called on screen. */
  readonly title: string;
  /** Symbol of the result in TeX, for example `R`. */
  readonly symbol: string;
  /** The formula in TeX. */
  readonly tex: string;
  /** The same formula as a mathjs expression in the names of `inputs`, SI units and radians. */
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly result: WorkingValue;
  /** Steps that are not a closed formula (a solved equilibrium, say) are told in words. */
  readonly note?: string;
  readonly source: string;
  readonly status: SourceStatus;
}

export interface WorkingInput extends WorkingValue {
  /** Name used in `formula`. */
  readonly name: string;
  /** TeX symbol. */
  readonly symbol: string;
  /** What it is, and where it came from (file field, default, another working's key). */
  readonly meaning: string;
  readonly from?: string;
}

export interface WorkingValue {
  /** SI value as used in the formula. */
  readonly value: number;
  /** SI unit, for example `m`, `rad`, `N*m^2`, `1`. */
  readonly unit: string;
}

/** How well a source is established; a status is never upgraded. */
export type SourceStatus = 'seen' | 'from memory' | 'derived' | 'common practice' | 'definition';
