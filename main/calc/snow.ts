import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { decimal, type Range } from './option.ts';
import { PER_MM3 } from './quantity.ts';

/** Hardness H_V by name, N/mm³: round values over the range Mössner et al. 2013 measured. */
const named: Readonly<Record<string, number>> = { soft: 0.1, groomed: 1, hard: 10, injected: 30 };
export const HARDNESS: Range = { unit: 'N/mm³', from: 0.04, to: 90 };

/** H_V in N/m³ from a name or a number of N/mm³; groomed when absent. */
export function hardnessFrom(given: CommandInput['options'][string]): number {
  if (typeof given !== 'string') return named.groomed * PER_MM3;
  const value = Object.hasOwn(named, given.toLowerCase()) ? named[given.toLowerCase()] : decimal(given);
  if (value >= HARDNESS.from && value <= HARDNESS.to) return value * PER_MM3;
  throw new InputFault(
    `--snow: "${given}" is not accepted; give ${Object.keys(named).join(', ')} or ${HARDNESS.from} to ${HARDNESS.to} ${HARDNESS.unit}`,
  );
}
