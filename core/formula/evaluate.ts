import { PRINTED } from './vocabulary.ts';
import { walk } from './walk.ts';

/**
 * The value of a printed formula with the values of its names put in, SI. Names go before constants of the
 * same name: a radius may be called `e`.
 *
 * @throws FieldError of the field `formula` for anything outside the vocabulary
 */
export function evaluateFormula(text: string, values: ReadonlyMap<string, number>): number {
  return walk(text, PRINTED, null, values)(0);
}
