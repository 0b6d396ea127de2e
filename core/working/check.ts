import { FieldError } from '../fault/index.ts';
import { evaluateFormula } from '../formula/index.ts';
import { balanceSides } from './balance.ts';
import type { Working } from './working.ts';
import { workingTex } from './working-tex.ts';

/** Largest relative difference between a formula's value and the stated result. */
const TOLERANCE = 1e-9;

const NAME = /^[A-Za-z][A-Za-z0-9_]*$/;

/**
 * Everything wrong with a working as an explanation: a formula that does not give the result, a balance that does not close, an input that is neither in the formula nor told of in
 * a note. Empty when it holds. Each room's tests put theirs through it.
 */
export function checkWorking(working: Working): string[] {
  const wrong: string[] = [];
  const say = (what: string) => wrong.push(`${working.key}: ${what}`);
  if (working.symbol.trim() === '') say('symbol is empty');
  if (!/^[a-z]+\.[A-Za-z.-]+$/.test(working.key)) say('the key is not of the form room.name');
  const { solved } = working;
  const text = [working.formula, solved?.left, solved?.right].join(' ; ');
  const names = working.inputs.map(input => input.name);
  for (const { name, symbol, value } of working.inputs) {
    if (!NAME.test(name)) say(`input "${name}" cannot be a name in a formula`);
    else if (!working.note && !mentions(text, name)) say(`input ${name} is not in the formula`);
    if (symbol.trim() === '') say(`input ${name} has no symbol`);
    if (!Number.isFinite(value)) say(`input ${name} is ${value}`);
  }
  if (new Set(names).size !== names.length) say('an input is listed twice');
  const attempt = (judge: () => void) => {
    try {
      judge();
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      say(`a formula cannot be read: ${error.message}`);
    }
  };
  if (solved) {
    attempt(() => {
      const { share, residual } = balanceSides(working, solved);
      if (!(share <= solved.within)) {
        say(
          `the balance of ${solved.of.key} is left open by ${residual} ${solved.unit}, over ${solved.within} of it`,
        );
      }
    });
    const { name, left, right } = solved;
    if (name !== undefined && names.includes(name)) say('the solved number is among its own inputs');
    if (working.formula === '' && !(name !== undefined && mentions(`${left} ; ${right}`, name))) {
      say('the solved number is not in its balance');
    }
    if (!(solved.within > 0 && solved.within <= 0.05)) say(`within is ${solved.within}`);
  }
  if (working.formula === '') {
    // A result reached by steps that no balance shows is told in words.
    if (!working.note && !solved) say('neither a formula nor a note tells how the result came about');
  } else {
    attempt(() => {
      const value = evaluateFormula(
        working.formula,
        new Map(working.inputs.map(input => [input.name, input.value])),
      );
      const { value: stated } = working.result;
      const difference = Math.abs(value - stated);
      if (!(difference <= TOLERANCE * Math.max(Math.abs(stated), Number.MIN_VALUE) || value === stated)) {
        say(`the formula gives ${value}, the result says ${stated}`);
      }
    });
  }
  attempt(() => workingTex(working));
  return wrong;
}

/** Whether a formula names an input. */
export const mentions = (formula: string, name: string): boolean =>
  new RegExp(`(?<![A-Za-z0-9_])${name}(?![A-Za-z0-9_])`).test(formula);
