import { mentions } from './check.ts';
import type { Working } from './working.ts';

/**
 * Why a working explains nothing, because it is fed its own result; null where it is not. A formula that is one of
 * its inputs always is, and so is a formula of one input alone unless that input is known by itself.
 */
export function ownResult(working: Working): string | null {
  const { formula, inputs, result } = working;
  const used = inputs.filter(input => mentions(formula, input.name));
  const bare = formula.replace(/[\s()]/g, '');
  if (inputs.some(input => input.name === bare)) return `the formula is the input ${bare} itself`;
  if (used.length !== 1) return null;
  const [{ name, value }] = used;
  return value === result.value ? `the input ${name} is the result` : `${name} alone gives the result`;
}
