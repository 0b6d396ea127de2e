import { evaluateFormula } from '../formula/index.ts';
import type { Working } from './working.ts';

/** Largest relative difference between a formula's value and the stated result. */
const TOLERANCE = 1e-9;

const NAME = /^[A-Za-z][A-Za-z0-9_]*$/;

/**
 * Everything wrong with a working as an explanation: a formula that does not give the result, an input that
 * is neither in the formula nor told of in a note, a missing source. Empty when it holds. Each room's tests put theirs through it.
 */
export function checkWorking(working: Working): string[] {
  const wrong: string[] = [];
  const say = (what: string) => wrong.push(`${working.key}: ${what}`);
  for (const field of ['title', 'symbol', 'tex', 'source'] as const) {
    if (working[field].trim() === '') say(`${field} is empty`);
  }
  if (!/^[a-z]+\.[A-Za-z.-]+$/.test(working.key)) say('the key is not of the form room.name');
  const names = working.inputs.map(input => input.name);
  for (const { name, symbol, meaning, value } of working.inputs) {
    if (!NAME.test(name)) say(`input "${name}" cannot be a name in a formula`);
    else if (!working.note && !mentions(working.formula, name)) say(`input ${name} is not in the formula`);
    if (symbol.trim() === '' || meaning.trim() === '') say(`input ${name} has no symbol or no meaning`);
    if (!Number.isFinite(value)) say(`input ${name} is ${value}`);
  }
  if (new Set(names).size !== names.length) say('an input is listed twice');
  // A result reached by steps rather than a formula is told in words.
  if (working.formula === '') {
    if (!working.note) say('neither a formula nor a note tells how the result came about');
    return wrong;
  }
  try {
    const value = evaluateFormula(
      working.formula,
      new Map(working.inputs.map(input => [input.name, input.value])),
    );
    const { value: stated } = working.result;
    const difference = Math.abs(value - stated);
    if (!(difference <= TOLERANCE * Math.max(Math.abs(stated), Number.MIN_VALUE) || value === stated)) {
      say(`the formula gives ${value}, the result says ${stated}`);
    }
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
  }
  return wrong;
}

const mentions = (formula: string, name: string): boolean =>
  new RegExp(`(?<![A-Za-z0-9_])${name}(?![A-Za-z0-9_])`).test(formula);
