import type { Accepted, FieldFault } from '../fault/index.ts';
import type { MeasureName } from '../units/index.ts';
import type { english } from './english.ts';
import type { Placeholders } from './placeholders.ts';

/** A number with its measure, which the reader's units and digits are made from. */
export interface Quantity {
  readonly quantity: MeasureName;
  /** In the unit the measure is held in: SI, or the unit its name ends in. */
  readonly value: number;
  /** In the same unit. */
  readonly plusMinus?: number;
  /** Decimals as shown, where the measure's own are too many or too few. */
  readonly decimals?: number;
  /** Leaves the unit out, as the first number of "30 to 40 km/h" does. */
  readonly bare?: true;
}

/** A field by its path in a file or a question: shown as written there, or by its label. */
export interface FieldName {
  readonly field: string;
}

/** What a placeholder may hold. A list is joined as the language joins one; `anyOf` with its "or". */
export type Value =
  | string
  | number
  | Quantity
  | FieldName
  | Sentence
  | FieldFault
  | { readonly accepted: Accepted }
  | { readonly anyOf: readonly Value[] }
  | readonly Value[];

type English = typeof english;

/** Name of a sentence or a label: its room, a point, what it says. */
export type Key = keyof English;

type ValueOf<How extends string> = How extends 'plural' | 'selectordinal'
  ? number
  : How extends 'select'
    ? string
    : Value;

/** The values that the sentence of a key needs. */
export type ValuesOf<K extends Key> = {
  readonly [P in Placeholders<English[K]> as P[0]]: ValueOf<P[1]>;
};

/** Keys of texts that need no values: labels, headings, plain sentences. */
export type PlainKey = { [K in Key]: [Placeholders<English[K]>] extends [never] ? K : never }[Key];

type SentenceWithValues = {
  [K in Exclude<Key, PlainKey>]: { readonly key: K; readonly values: ValuesOf<K> };
}[Exclude<Key, PlainKey>];

/** A sentence or a label as data: core says what there is to say, the reader's language and units say how. */
export type Sentence = { readonly key: PlainKey; readonly values?: undefined } | SentenceWithValues;
