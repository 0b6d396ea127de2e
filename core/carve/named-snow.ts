import { inSi, type Said, USUAL } from '../conditions/index.ts';
import { N_PER_MM3 } from '../units/index.ts';

export type SnowName = 'soft' | 'groomed' | 'hard' | 'injected';

/**
 * Snow by name, softest first, with its hardness H_V in N/mm³: round values inside the span of Mössner et al.,
 * J. Glaciol. (2013), and placeholders for a measurement.
 */
export const NAMED_SNOWS: readonly { readonly name: SnowName; readonly hardnessNPerMm3: number }[] = [
  { name: 'soft', hardnessNPerMm3: 0.1 },
  { name: 'groomed', hardnessNPerMm3: 1 },
  { name: 'hard', hardnessNPerMm3: 10 },
  { name: 'injected', hardnessNPerMm3: 30 },
];

/** Strength of groomed snow's wall, N/m², and the power of its hardness that others follow. */
const GROOMED_STRENGTH = 600e3;
const STRENGTH_POWER = 1 / 3;

/**
 * Strength S of the wall that an edge leans on, N/m², where nobody says: 600 kPa on groomed snow, by the cube root of
 * the hardness (N/m³) elsewhere, so some 280 kPa soft, 1290 hard, 1860 injected. Our own value: that a wall fails at
 * a force proportional to its depth and length is measured (Mössner et al., J. Glaciol. 2013, 108 shear tests), the
 * strengths they found are not at hand. Reasoned so: groomed snow bears three and a half body weights of an 80-kg skier
 * at every lean, skis tilted as the body leans, on an evenly pressed edge of 1.4 m (F sinθ cosθ ≤ 2S²L/H_V); harder
 * snow is stronger, but less so than the groove gets shallower (by the root of the hardness), so that ice asks for
 * more edge than lean. It is of the size of the pressure under the base, H_V e cosθ/2.
 */
export const usualWallStrength = (hardness: number): number =>
  GROOMED_STRENGTH * (hardness / N_PER_MM3) ** STRENGTH_POWER;

/** The strength that is said, else that of the hardness said or usual, N/m². */
export function wallStrengthOf(said: Partial<Said>): number {
  const { hardness, wallStrength = usualWallStrength(hardness) } = inSi({ ...USUAL, ...said }, [
    'hardnessNPerMm3',
    'wallStrengthKPa',
  ]);
  return wallStrength;
}
