import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { PER_MM3 } from './quantity.ts';

/** Hardness H_V by name, N/mm³: round values over the range Mössner et al. 2013 measured. */
const named: Readonly<Record<string, number>> = { soft: 0.1, groomed: 1, hard: 10, injected: 30 };
const LEAST = 0.04;
const MOST = 90;

/** H_V in N/m³ from a name or a number of N/mm³; groomed when absent. */
export function hardnessFrom(given: CommandInput['options'][string]): number {
  if (typeof given !== 'string') return named.groomed * PER_MM3;
  const value = Object.hasOwn(named, given.toLowerCase()) ? named[given.toLowerCase()] : Number(given);
  if (value >= LEAST && value <= MOST) return value * PER_MM3;
  throw new InputFault(
    `--snow: "${given}" is not accepted; give ${Object.keys(named).join(', ')} or ${LEAST} to ${MOST} N/mm³`,
  );
}
