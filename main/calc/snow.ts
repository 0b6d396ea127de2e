import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { numberIn } from './option.ts';
import { N_PER_MM3 } from './quantity.ts';
import { HARDNESS } from './ranges.ts';

/** Hardness H_V by name, N/mm³: round values inside the published span, placeholders for a measurement. */
const named: Readonly<Record<string, number>> = { soft: 0.1, groomed: 1, hard: 10, injected: 30 };

/** H_V where nobody says, N/mm³. */
export const USUAL_HARDNESS = named.groomed;

/** What `--help` says of `--snow`. */
export const SNOW_NOTE = '--snow: soft, groomed (unless given), hard, injected, or N/mm³.';

/**
 * H_V in N/m³ from a name or a number of N/mm³; groomed when absent.
 *
 * @throws InputFault naming what was given and what is accepted
 */
export function hardnessFrom(given: CommandInput['options'][string]): number {
  if (typeof given !== 'string') return USUAL_HARDNESS * N_PER_MM3;
  const word = given.toLowerCase();
  const value = Object.hasOwn(named, word) ? named[word] : numberIn(given, HARDNESS);
  if (value !== null) return value * N_PER_MM3;
  throw new InputFault(
    `--snow: "${given}" is not accepted; give ${Object.keys(named).join(', ')} or ${HARDNESS.from} to ${HARDNESS.to} ${HARDNESS.unit}`,
  );
}
