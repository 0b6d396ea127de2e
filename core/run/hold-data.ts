/**
 * Hold as a limit at a node: ψ t ≤ (θ − b t) t + 1°, t = tanh(θ/4°). Past it the shelf lets go; a lean to the
 * other side is held by the groove's wall. The bevel counts as far as the edge has bitten, so that a flat ski
 * with a bevel asks for nothing.
 */

import { BITE } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';

/** How far the lean may pass the shelf, rad: 1°, the width of what a shelf is. */
export const HOLD_ROOM = DEGREE;

/** Writes [t, (θ − b t) t + 1°] at `at`. */
export function holdData(edge: number, bevel: number, out: Float64Array, at: number): void {
  const share = Math.tanh(edge / BITE);
  out[at] = share;
  out[at + 1] = edge * share - bevel * share * share + HOLD_ROOM;
}
