import { accept, acceptSkier, type GrooveWall, type OwnCurvature, type Skier } from '../skier/index.ts';

/** The slope along the fall line; y in m along the ground. A `SlopeProfile` of core/run is one. */
export interface Slope {
  /** Sine of the slope angle. */
  sine(y: number): number;
  /** Of the ground, 1/m: positive in a dip. */
  curvature(y: number): number;
}

/** Ski, skier, snow, air and hill of a line. SI, rad. */
export interface LineConditions {
  readonly ski: OwnCurvature & GrooveWall;
  /** Contact length, m. */
  readonly contactLength: number;
  readonly baseBevel: number;
  /** Part of the load on the outer ski. */
  readonly outerShare: number;
  readonly skier: Skier;
  /** Coefficient of friction ski on snow. */
  readonly friction: number;
  /** σ: share of the load that an edge slipping at a small angle takes, per rad. */
  readonly scrape: number;
  /** Strength S of the wall the edge leans on, N/m²; Infinity for one that bears everything. */
  readonly wallStrength: number;
  /** kg/m³. */
  readonly airDensity: number;
  readonly slope: Slope;
  /** From the turning pole to the skis as they pass it, m. */
  readonly clearance: number;
}

/** @throws RangeError naming the field, the value found and what is accepted */
export function acceptConditions(given: LineConditions): void {
  acceptSkier(given.skier);
  accept('contactLength', given.contactLength, 'm', 0.3, 3);
  accept('baseBevel', given.baseBevel, 'rad', 0, 0.1);
  accept('outerShare', given.outerShare, '', 0.1, 1);
  accept('friction', given.friction, '', 0, 0.5);
  accept('scrape', given.scrape, '', 0, 10);
  accept('wallStrength', given.wallStrength, 'N/m²', 1e3, Number.POSITIVE_INFINITY);
  accept('airDensity', given.airDensity, 'kg/m³', 0, 2);
  accept('clearance', given.clearance, 'm', 0, 5);
}
