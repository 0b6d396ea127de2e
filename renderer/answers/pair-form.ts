import { perPair, ski } from '../state/index.ts';
import { halfOutline } from './outline.ts';

/** A pair as a scene draws it, m from the rear contact point. */
export interface PairForm {
  readonly x: Float64Array;
  readonly halfWidth: Float64Array;
  readonly contactLength: number;
  readonly length: number;
  readonly bootCentre: number;
  readonly soleLength: number;
}

/** One object a pair, so that a scene rebuilds only what changed. */
export const formOf = perPair((pair): PairForm => {
  const { contactLength, length, bootCentre, soleLength } = ski(pair);
  const { x, y } = halfOutline(pair);
  return { x, halfWidth: y, contactLength, length, bootCentre, soleLength };
});
