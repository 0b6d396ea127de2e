/** What is taken when the file says nothing; the share is of the contact length. */
export const DEFAULTS = {
  camberMm: 0,
  bootCentreShare: 0.47,
  bootSoleMm: 300,
  baseBevelDeg: 0,
  sideAngleDeg: 90,
  /** The greatest heights the rules allow a racer [seen], for want of a measurement. */
  standingHeightMm: 50,
  bootSoleHeightMm: 43,
} as const;
