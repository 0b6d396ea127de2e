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
