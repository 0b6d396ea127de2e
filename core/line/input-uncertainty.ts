/**
 * How well the inputs of a run are known, as seconds that one standard uncertainty of each is worth. Snow, skier and
 * hill are the same for all pairs; widths, stiffness and bevel are each pair's own.
 */

import { type MeasuringUncertainty, sidecut, TAPE_AND_CALIPER } from '../shape/index.ts';
import { DEGREE } from '../units/index.ts';
import type { LineConditions } from './conditions.ts';
import type { PairOnSnow } from './pair-on-snow.ts';
import type { SkiWorth } from './ski-changes.ts';
import { type LineWorth, type Worth, worthOfRadius } from './worth.ts';

/** Seconds by input. */
export type InputShares = Readonly<Record<string, number>>;

/**
 * Standard uncertainties of what all pairs share, in SI and rad (own choice: what a coach knows of an athlete, a
 * hill and a day without measuring them).
 */
const SHARED: Partial<Record<keyof Worth | 'startSpeed', number>> = {
  friction: 0.01,
  airDensity: 0.03,
  mass: 1,
  slope: 0.5 * DEGREE,
  pushMost: 0.2,
  pushRate: 2,
  legSpeed: 0.15,
  legLongest: 0.02,
  legShortest: 0.02,
  edgeMost: 2 * DEGREE,
  edgeRate: 1,
  angulationMost: 3 * DEGREE,
  clearance: 0.05,
  startSpeed: 0.3,
};
/** The same as shares of the value: drag area, and the two laws that are our own. */
const DRAG_SHARE = 0.1;
const SCRAPE_SHARE = 0.3;
const WALL_SHARE = 0.5;
/** Hardness of the snow is known to a factor. */
const HARDNESS_FACTOR = 3;
/** Stiffness as stated, of the value; a measured one is no worse. */
const STIFFNESS_SHARE = 0.1;
/** Radius of a pair without stiffness, whose groove is not known (own choice). */
const RIGID_SHARE = 0.1;
/** A bevel as filed by hand, rad. */
const BEVEL = 0.1 * DEGREE;

/** What snow, skier and hill leave open; hardness counts where the pair is solved in its groove. */
export function sharedShares(
  { inputs }: LineWorth,
  startSpeed: number,
  conditions: LineConditions,
  skiWorths: readonly SkiWorth[],
): InputShares {
  const { skier, scrape, wallStrength } = conditions;
  const worth = { ...inputs, startSpeed };
  const known = Object.entries(SHARED).map(([input, by]) => [input, worth[input as keyof typeof worth] * by]);
  const doubled = skiWorths.find(({ change }) => change === 'hardness')?.seconds ?? 0;
  return {
    ...Object.fromEntries(known),
    dragArea: inputs.dragArea * DRAG_SHARE * skier.dragArea,
    scrape: inputs.scrape * SCRAPE_SHARE * scrape,
    wallStrength: Number.isFinite(wallStrength) ? inputs.wallStrength * WALL_SHARE * wallStrength : 0,
    hardness: (doubled * Math.log(HARDNESS_FACTOR)) / Math.log(2),
  };
}

/** What the pair's own measurements leave open. */
export function ownShares(
  { ski, surface, groove, stiffnessUnknown }: PairOnSnow,
  { inputs, groove: places }: LineWorth,
  skiWorths: readonly SkiWorth[],
  { uWidth, uLength }: MeasuringUncertainty = TAPE_AND_CALIPER,
): InputShares {
  const radius = (share: number) => worthOfRadius(places, surface, share);
  const shared = { baseBevel: inputs.baseBevel * BEVEL };
  if (!groove) {
    const { radius: R, radiusUncertainty } = sidecut(ski, { uWidth, uLength });
    return {
      ...shared,
      sidecutRadius: radius(radiusUncertainty / R),
      contactLength: inputs.contactLength * uLength,
      stiffness: stiffnessUnknown ? radius(RIGID_SHARE) : 0,
    };
  }
  const ofSki = skiWorths
    .filter(({ change }) => change !== 'hardness')
    .map(({ change, by, unit, seconds }) => {
      const known = unit === 'mm' ? 1000 * uWidth : 100 * STIFFNESS_SHARE;
      return [change, (seconds * known) / by];
    });
  // Over the same widths a longer edge is cut to a longer radius, by the square.
  const contactLength = inputs.contactLength * uLength + radius((2 * uLength) / ski.contactLength);
  return { ...shared, ...Object.fromEntries(ofSki), contactLength };
}
