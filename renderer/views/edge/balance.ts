import { balancedLoad, GRAVITY, leanAngle, normalForce, sidewaysForce } from '../../../core/run/index.ts';
import { conditions } from '../../state/index.ts';
import { DEGREE } from './asked.ts';

export interface Balance {
  /** ψ, rad from the slope's normal. */
  readonly lean: number;
  /** What the snow gives a skier in balance at that lean, N. */
  readonly load: number;
}

/** Balance in a turn of radius R (m) at the present speed, as the skier crosses the fall line. */
export function balanceIn(radius: number): Balance {
  const { speedKmh, slopeDeg, massKg } = conditions.value;
  const slope = slopeDeg * DEGREE;
  const sideways = sidewaysForce(massKg, speedKmh / 3.6, radius, slope, 0, 1);
  const lean = leanAngle(sideways, normalForce(massKg, slope));
  return { lean, load: massKg * GRAVITY * balancedLoad(lean, slope) };
}
