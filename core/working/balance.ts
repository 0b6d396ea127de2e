import { evaluateFormula } from '../formula/index.ts';
import type { Balance, Working } from './working.ts';

/** Both sides of a balance with the solution put in, in the balance's unit, and how far apart they are left. */
export interface Sides {
  readonly left: number;
  readonly right: number;
  /** Left less right. */
  readonly residual: number;
  /** The residual over the larger side. */
  readonly share: number;
}

/**
 * Puts a solved number and its inputs into the balance it was solved from.
 *
 * @throws FieldError of the field `formula` for a side that cannot be evaluated
 */
export function balanceSides(working: Working, { left, right, name }: Balance): Sides {
  const values = new Map(working.inputs.map(input => [input.name, input.value]));
  if (name !== undefined) values.set(name, working.result.value);
  const [a, b] = [evaluateFormula(left, values), evaluateFormula(right, values)];
  const residual = a - b;
  const larger = Math.max(Math.abs(a), Math.abs(b));
  return { left: a, right: b, residual, share: residual === 0 ? 0 : Math.abs(residual) / larger };
}
