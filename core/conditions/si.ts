import { shownAs, sizeOf } from '../units/index.ts';
import { type Field, type FieldOf, type Group, rowOf, type Said } from './said.ts';
import type { CONDITIONS } from './table.ts';

type Table = typeof CONDITIONS;
type Known<F extends Field> = Table[F]['usual'] extends null ? never : F;

/** Conditions in SI and rad, by the names the rooms that compute ask for them. */
export type SiOf<F extends Field> = {
  readonly [K in Known<F> as Table[K]['si']]: number;
} & {
  readonly [K in Exclude<F, Known<F>> as Table[K]['si']]?: number;
};

/** The same of every row of some groups. */
export type SiOfGroup<G extends Group> = SiOf<FieldOf<G>>;

/** The unit a condition is said in; empty for a bare number. */
export const unitSaid = (field: Field): string => shownAs(rowOf(field).measure, 'metric').unit;

/** Units that are none: a count, a ratio, multiples of the body's weight. */
const BARE = new Set(['', '× body weight', '× body weight/s']);

/** SI value of one of that unit. */
export function factorOf(field: Field): number {
  const unit = unitSaid(field);
  return BARE.has(unit) ? 1 : sizeOf(unit);
}

/** A condition said, in SI. */
export const siOf = (field: Field, said: number): number => said * factorOf(field);

/** A condition in SI, as it is said: 7, not 6.999…. */
export const saidOf = (field: Field, si: number): number => Number((si / factorOf(field)).toPrecision(12));

/** What was said of some fields, in SI by their SI names; what is not said stays out. */
export function inSi<F extends Field>(said: Partial<Said>, fields: readonly F[]): SiOf<F> {
  return Object.fromEntries(
    fields.flatMap(field => {
      const value = said[field];
      return value === undefined ? [] : [[rowOf(field).si, siOf(field, value)]];
    }),
  ) as unknown as SiOf<F>;
}
