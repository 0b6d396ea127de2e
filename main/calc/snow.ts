import { NAMED_SNOWS, USUAL_HARDNESS } from '../../core/carve/index.ts';
import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { numberIn } from './option.ts';
import { N_PER_MM3 } from './quantity.ts';
import { HARDNESS } from './ranges.ts';

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
  const named = NAMED_SNOWS.find(({ name }) => name === word);
  const value = named ? named.hardnessNPerMm3 : numberIn(given, HARDNESS);
  if (value !== null) return value * N_PER_MM3;
  throw new InputFault(
    `--snow: "${given}" is not accepted; give ${NAMED_SNOWS.map(({ name }) => name).join(', ')} or ${HARDNESS.from} to ${HARDNESS.to} ${HARDNESS.unit}`,
  );
}
