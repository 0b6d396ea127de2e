/**
 * What a skier can do. SI, rad; forces in body weights (m g). Ranges and usual values are those of core/conditions.
 */

import {
  acceptConditions,
  type FieldOf,
  fieldsOf,
  inSi,
  type Said,
  type SiOf,
  type SiOfGroup,
  USUAL,
} from '../conditions/index.ts';
import { accept } from '../fault/index.ts';
import { DEGREE } from '../units/index.ts';
import { type LegSpan, legOfHeight } from './body.ts';

/** Mass, leg, drag area and limits of a skier. */
export type Skier = SiOfGroup<'limits'> & SiOf<'massKg' | 'dragAreaM2'> & LegSpan;

/** Least that a leg has to stretch for balance, m (our own choice). */
const LEAST_STRETCH = 0.01;

const OWN: readonly (FieldOf<'limits'> | 'massKg' | 'dragAreaM2')[] = [
  ...fieldsOf('limits'),
  'massKg',
  'dragAreaM2',
];

/** The leg that is said, else that of the height said, else of the usual height; m. */
export function legSpanOf(said: Partial<Said>): LegSpan {
  const { height, ...stated } = inSi({ ...USUAL, ...said }, ['heightM', ...fieldsOf('legSpan')]);
  return { ...legOfHeight(height), ...stated };
}

/** A skier by what is said of one, as usual in everything else. */
export const skierOf = (said: Partial<Said>): Skier => ({
  ...inSi({ ...USUAL, ...said }, OWN),
  ...legSpanOf(said),
});

/** The skis stay on the snow: least push in an optimum, body weights. */
export const LEAST_PUSH = 0.1;

/** How much further than the shelf's own angle the snow's force may lean before the shelf lets go, rad. */
export const SHELF_ALLOWANCE = DEGREE;

/** Bounds of a path that is not the ski's own: mismatch 1/m and its rate 1/(m s), drift rad and its rate rad/s. */
export const MISMATCH_MOST = 0.15;
export const MISMATCH_RATE = 2;
export const DRIFT_MOST = 0.6;
export const DRIFT_RATE = 4;

/** @throws FieldError for what is out of range */
export function acceptSkier(skier: Skier): void {
  acceptConditions(skier, [...OWN, ...fieldsOf('legSpan')]);
  acceptLegSpan(skier);
}

/** @throws FieldError where the longest leg is hardly longer than the shortest */
export function acceptLegSpan({ legShortest, legLongest }: LegSpan): void {
  const from = legShortest + LEAST_STRETCH * (1 - 1e-9);
  accept('legLongest', legLongest, { from, quantity: 'bodyLength' });
}
