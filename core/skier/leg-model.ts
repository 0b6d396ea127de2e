/**
 * The skier as a mass at the end of a leg that leans and folds, on skis that follow a path over a slope: rates of
 * change as terms on a tape, so that every solver has exact derivatives of the same model. SI, rad; per unit mass.
 *
 * Right is positive. The path's heading χ counts from the fall line, the lean ψ from the slope's normal towards
 * the path's right, p = ℓ sinψ is how far right of the skis the mass is, u = v(1 − pκ) its own speed along them.
 */

import type { Tape, Term } from '../numeric/index.ts';

/** Standard gravity rounded as in the published checks, m/s². */
export const GRAVITY = 9.81;

/** Terms the model reads. */
export interface LegTerms {
  readonly heading: Term;
  /** Of the mass, along the skis' path. */
  readonly speed: Term;
  readonly lean: Term;
  readonly leanRate: Term;
  readonly leg: Term;
  readonly legSpeed: Term;
  /** Force along the leg over the weight m g. */
  readonly push: Term;
  /** Of the skis' path, 1/m. */
  readonly curvature: Term;
  /** Share of the push that the edge's scraping takes, see `scrapeShare`. */
  readonly scrape: Term;
  /** g sinα and the pull into the snow (g cosα, with the ground's own curve where it has one), m/s². */
  readonly downhill: Term;
  readonly intoSnow: Term;
  readonly friction: Term;
  /** ρ C_dA / (2 m), 1/m. */
  readonly drag: Term;
}

/** What a rate is taken over: seconds and metres of the skis' path for one unit of it. */
export interface Pace {
  readonly seconds: Term;
  readonly metres: Term;
}

/** 1 − pκ: the mass's speed over the skis'. Positive as long as the mass is on this side of the turn's centre. */
export function massOverSkis(t: Tape, leg: Term, lean: Term, curvature: Term): Term {
  return t.shift(t.scale(t.multiply(leg, t.sine(lean), curvature), -1), 1);
}

export interface LegRates {
  readonly heading: Term;
  readonly speed: Term;
  readonly lean: Term;
  readonly leanRate: Term;
  readonly leg: Term;
  readonly legSpeed: Term;
}

/**
 * Rates over the pace's unit:
 *
 *   χ' = κ,  u' = ṗ κ + g sinα cosχ − (μ + s) F − ρ C_dA u²/(2m),  ψ' = ω,
 *   ω' = (g cosα sinψ − A cosψ − 2 ℓ̇ ω)/ℓ,  ℓ' = ℓ̇,  ℓ̇' = F − A sinψ − g cosα cosψ + ℓ ω²
 *
 * with the path's terms per metre and the rest per second.
 */
export function legRates(t: Tape, of: LegTerms, pace: Pace): LegRates {
  const sinLean = t.sine(of.lean);
  const cosLean = t.cosine(of.lean);
  const across = t.multiply(of.downhill, t.sine(of.heading));
  const along = t.multiply(of.downhill, t.cosine(of.heading));
  const push = t.scale(of.push, GRAVITY);
  // ṗ, how fast the mass moves away from the path.
  const outward = t.add(t.multiply(of.leg, cosLean, of.leanRate), t.multiply(of.legSpeed, sinLean));
  const curve = t.multiply(of.curvature, pace.metres);
  // v²κ(1 − pκ) over the pace's unit.
  const turning = t.multiply(of.speed, curve);
  const resisted = t.add(
    t.multiply(t.add(of.friction, of.scrape), push),
    t.multiply(of.drag, t.square(of.speed)),
  );
  const falling = t.subtract(
    t.subtract(t.multiply(of.intoSnow, sinLean), t.multiply(across, cosLean)),
    t.scale(t.multiply(of.legSpeed, of.leanRate), 2),
  );
  const lifting = t.subtract(
    t.add(push, t.multiply(of.leg, t.square(of.leanRate))),
    t.add(t.multiply(across, sinLean), t.multiply(of.intoSnow, cosLean)),
  );
  return {
    heading: curve,
    speed: t.add(t.multiply(outward, curve), t.multiply(t.subtract(along, resisted), pace.seconds)),
    lean: t.multiply(of.leanRate, pace.seconds),
    leanRate: t.divide(t.subtract(t.multiply(falling, pace.seconds), t.multiply(turning, cosLean)), of.leg),
    leg: t.multiply(of.legSpeed, pace.seconds),
    legSpeed: t.subtract(t.multiply(lifting, pace.seconds), t.multiply(turning, sinLean)),
  };
}
