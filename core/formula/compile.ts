import { FieldError } from '../fault/index.ts';
import { TYPED } from './vocabulary.ts';
import { walk } from './walk.ts';

/**
 * Compiles what a person typed, an expression in one variable, into a function of it.
 *
 * @param variable the name the expression knows it by, for example `s`
 * @throws FieldError of the field `formula` for anything outside the vocabulary or its limits
 */
export function compileFormula(text: string, variable: string): (value: number) => number {
  if (text.trim() === '') {
    throw new FieldError({
      field: 'formula',
      found: { key: 'formula.empty' },
      accepted: { key: 'formula.expressionIn', values: { variable } },
    });
  }
  return walk(text, TYPED, variable, new Map());
}
