/**
 * The ski on its path: the curvature it wants of itself, and what a path that is not its own costs.
 */

import type { Tape, Term } from '../numeric/index.ts';
import { DEGREE } from '../units/index.ts';

/** Edge angle over which a flat ski begins to follow its sidecut, rad: no arc on a flat ski. */
export const BITE = 4 * DEGREE;

/** Keeps the scrape of a path that is nearly the ski's own smooth, 1/m. */
const LEAST_MISMATCH = 1e-3;

/** Curvature κ = 1/R of a ski's own track, 1/m, and its slopes; see core/carve. */
export interface OwnCurvature {
  /** Writes [κ, κ_θ, κ_F, κ_θθ, κ_θF, κ_FF] at an edge angle (rad, any sign) and load on this ski (N). */
  curvature(edgeAngle: number, load: number, out: Float64Array): void;
}

/** tanh(θ/4°). */
export function bite(t: Tape, edge: Term): Term {
  return t.tanh(t.scale(edge, 1 / BITE));
}

/** κ_c = tanh(θ/4°)/R(|θ|, F): what the ski wants, from the edge angle and the push in body weights. */
export function ownCurvature(t: Tape, ski: OwnCurvature, loadPerPush: number, edge: Term, push: Term): Term {
  const of = (edgeAngle: number, bodyWeights: number, out: Float64Array) => {
    ski.curvature(edgeAngle, bodyWeights * loadPerPush, out);
    out[2] *= loadPerPush;
    out[4] *= loadPerPush;
    out[5] *= loadPerPush * loadPerPush;
  };
  return t.multiply(bite(t, edge), t.external(of, edge, push));
}

/**
 * s = σ (δ + √(q² + 10⁻⁶) L/4): a point of the edge at a distance x from the boot slips at an angle x q where the
 * path's curvature misses the ski's by q, on average |q| L/4; drifting on purpose adds δ. Our own law; `scrape` is σ.
 */
export function scrapeShare(
  t: Tape,
  mismatch: Term,
  drift: Term | null,
  scrape: Term,
  quarterLength: Term,
): Term {
  const slip = t.multiply(
    t.squareRoot(t.shift(t.square(mismatch), LEAST_MISMATCH * LEAST_MISMATCH)),
    quarterLength,
  );
  return t.multiply(scrape, drift === null ? slip : t.add(drift, slip));
}
