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

/** H_V where nobody says, N/mm³: groomed snow. */
export const USUAL_HARDNESS = 1;

/** H_V found by Mössner et al. over 236 tests, N/mm³: what may be asked. */
export const HARDNESS_SPAN = { from: 0.04, to: 90 } as const;
