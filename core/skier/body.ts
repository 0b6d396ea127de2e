/** What a skier's height says of the leg of the model, skis to the centre of mass. */

import { acceptConditions } from '../conditions/index.ts';

/** Longest leg over body height (common practice). */
const LEG_OF_HEIGHT = 0.57;

/** Shortest leg, folded deep, over the longest (common practice). */
const FOLDED_SHARE = 0.65;

export interface LegSpan {
  /** m */
  readonly legShortest: number;
  readonly legLongest: number;
}

/**
 * @param height of the body, m
 * @throws FieldError for a height out of range
 */
export function legOfHeight(height: number): LegSpan {
  acceptConditions({ height }, ['heightM']);
  const legLongest = LEG_OF_HEIGHT * height;
  return { legLongest, legShortest: FOLDED_SHARE * legLongest };
}

/** Leg a skier stands a turn on, m: the longest, less what knees and hips are bent by (our own choice). */
export const standingLeg = (height: number): number => 0.9 * legOfHeight(height).legLongest;
