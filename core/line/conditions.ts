import { accept, acceptWithin, type FieldOf, fieldsOf, type SiOf } from '../conditions/index.ts';
import { acceptSkier, type OwnCurvature, type Skier } from '../skier/index.ts';

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
  readonly ski: OwnCurvature;
  /** Contact length, m. */
  readonly contactLength: number;
  readonly baseBevel: number;
  readonly skier: Skier;
  readonly slope: Slope;
}

/** @throws RangeError naming the field, the value found and what is accepted */
export function acceptConditions(given: LineConditions): void {
  acceptSkier(given.skier);
  accept(given, ASKED);
  acceptWithin('contactLength', given.contactLength, 'm', 0.3, 3);
  acceptWithin('baseBevel', given.baseBevel, '°', 0, 5);
}
