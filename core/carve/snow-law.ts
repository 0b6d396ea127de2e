import { siOf, USUAL } from '../conditions/index.ts';

/**
 * How snow answers a stretch of edge pressed into it: the solver's one replaceable part, so that a foundation
 * with a known solution can stand in for snow.
 */
export interface SnowLaw {
  /** Steady groove: points behind meet only what the points ahead have left (false: every point is virgin). */
  readonly remembers: boolean;
  /**
   * Line load on undisturbed snow at penetration `depth` (m), half width (m), local edge angle (rad) and
   * hardness (N/m³). Fills `out` with f (N/m), ∂f/∂depth, ∂f/∂angle, then the twisting moment about the
   * midline m (N·m/m), ∂m/∂depth, ∂m/∂angle.
   */
  evaluate(depth: number, halfWidth: number, edgeAngle: number, hardness: number, out: Float64Array): void;
}

/** Usual rebound of packed snow: a point this much shallower than its groove carries nothing, m. */
export const REBOUND = siOf('reboundMm', USUAL.reboundMm);
