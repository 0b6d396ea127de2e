/** What a measurement says about a limit once its uncertainty is taken into account. */
export type LimitVerdict = 'passes' | 'fails' | 'too close to call' | 'not given';

const severity: readonly LimitVerdict[] = ['not given', 'passes', 'too close to call', 'fails'];

/** The worst of several verdicts; `not given` where none could be judged. */
export const worstOf = (verdicts: readonly LimitVerdict[]): LimitVerdict =>
  verdicts.reduce<LimitVerdict>(
    (worse, verdict) => (severity.indexOf(verdict) > severity.indexOf(worse) ? verdict : worse),
    'not given',
  );

/**
 * Compares `found` ± `plusMinus` with the limits, all in one unit. A measurement within its own uncertainty
 * of a limit is too close to call, on either side of it.
 */
export function limitVerdict(
  found: number | null,
  plusMinus: number,
  least: number | undefined,
  most: number | undefined,
): LimitVerdict {
  if (found === null) return 'not given';
  const margin = Math.min(
    least === undefined ? Number.POSITIVE_INFINITY : found - least,
    most === undefined ? Number.POSITIVE_INFINITY : most - found,
  );
  // Readings come in tenths of a millimetre, so a margin of exactly the uncertainty is not told from one by rounding.
  const slack = 1e-9 * Math.abs(found);
  if (margin >= plusMinus - slack && margin >= 0) return 'passes';
  return margin < -plusMinus ? 'fails' : 'too close to call';
}
