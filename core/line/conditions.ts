import { acceptConditions, type FieldOf, fieldsOf, type SiOf } from '../conditions/index.ts';
import { accept } from '../fault/index.ts';
import { acceptSkier, type GrooveWall, type OwnCurvature, type Skier } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';

/** The slope along the fall line; y in m along the ground. A `SlopeProfile` of core/run is one. */
export interface Slope {
  /** Sine of the slope angle. */
  sine(y: number): number;
  /** Of the ground, 1/m: positive in a dip. */
  curvature(y: number): number;
}

type Asked = FieldOf<'model' | 'pole'> | 'friction' | 'airDensity';
const ASKED: readonly Asked[] = [...fieldsOf('model', 'pole'), 'friction', 'airDensity'];

/** Ski, skier, snow, air and hill of a line. SI, rad. */
export interface LineConditions extends SiOf<Asked> {
  readonly ski: OwnCurvature & GrooveWall;
  /** Contact length, m. */
  readonly contactLength: number;
  readonly baseBevel: number;
  readonly skier: Skier;
  /** Strength S of the wall the edge leans on, N/m²; Infinity for one that bears everything. */
  readonly wallStrength: number;
  readonly slope: Slope;
}

/** @throws FieldError for a condition out of range */
export function acceptLine(given: LineConditions): void {
  acceptSkier(given.skier);
  acceptConditions(given, ASKED);
  accept('contactLength', given.contactLength, { from: 0.3, to: 3, quantity: 'skiLength' });
  accept('baseBevel', given.baseBevel, { from: 0, to: 5 * DEGREE, quantity: 'angle' });
  accept('wallStrength', given.wallStrength, { from: 1e3, to: Infinity, unit: 'N/m²' });
}
