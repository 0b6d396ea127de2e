import { NAMED_SNOWS, USUAL_HARDNESS, usualWallStrength } from '../../core/carve/index.ts';
import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { numberIn, oneNumber } from './option.ts';
import { KPA, N_PER_MM3 } from './quantity.ts';
import { HARDNESS, WALL } from './ranges.ts';

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

/** What `--help` says of `--wall`. */
export const WALL_NOTE =
  '--wall KPA: strength of the wall of snow the edge leans on; 600 on groomed snow, by the cube root of the hardness elsewhere.';

/**
 * Strength of the groove's wall, N/m², where `--wall` does not say that which suits the hardness (N/m³).
 *
 * @throws InputFault naming what was given and what is accepted
 */
export const wallStrengthFrom = (options: CommandInput['options'], hardness: number): number =>
  oneNumber(options, 'wall', WALL, usualWallStrength(hardness) / KPA) * KPA;
