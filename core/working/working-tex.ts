import { formulaTex } from '../formula/index.ts';
import type { Working } from './working.ts';

/** Typed beside a formula without a reason, TeX is not trusted: the formula's own text is set. */
const byHand = ({ tex, texReason, formula, solved }: Working): string | null =>
  tex && (texReason || (formula === '' && !solved)) ? tex : null;

/**
 * The equation of a working in TeX, made from the text of its formula or of the balance it was solved from, or as
 * it was set by hand where the working says why.
 *
 * @throws FieldError of the field `formula` for a formula that cannot be read
 */
export function workingTex(working: Working): string {
  const { symbol, formula, solved, inputs } = working;
  const symbols = new Map(inputs.map(input => [input.name, input.symbol]));
  const set = byHand(working);
  if (set !== null) return set.startsWith(`${symbol} =`) ? set : `${symbol} = ${set}`;
  if (formula !== '') {
    const right = formulaTex(formula, symbols);
    return right === symbol ? right : `${symbol} = ${right}`;
  }
  return solved ? balanceTex(working) : symbol;
}

/** The balance of a solved number in TeX; empty for a working that is none. */
export function balanceTex({ symbol, inputs, solved }: Working): string {
  if (!solved) return '';
  const symbols = new Map(inputs.map(input => [input.name, input.symbol]));
  if (solved.name !== undefined) symbols.set(solved.name, symbol);
  return `${formulaTex(solved.left, symbols)} = ${formulaTex(solved.right, symbols)}`;
}
