import type { Profile } from './profile.ts';

/**
 * Over this length from either of its ends a stiff span takes up its share of the bending, m: rubber, screws and
 * toe piece hand it over little by little, and a step in EI would make the answer hang on where a mesh is cut.
 * Our own value; the end of a plate is in no source we have.
 */
export const RUN_IN = 0.02;

/** A stretch of the ski with something stiff on it. */
export interface StiffSpan {
  /** Ends, m from the rear contact point; at least twice `RUN_IN` apart. */
  readonly from: number;
  readonly to: number;
  /** EI or GJ added between them, N·m²; 0 or more. */
  readonly newtonM2: number;
}

/**
 * A profile with a span added to it, N·m². Plate and ski bend side by side, each about its own middle: the rubber
 * between them lets them slide, so their stiffnesses add (two beams in parallel, any text on strength of
 * materials). A plate bolted to work as one section adds more; its measured addition is what `newtonM2` takes.
 */
export function withSpan(profile: Profile, { from, to, newtonM2 }: StiffSpan): Profile {
  if (newtonM2 === 0) return profile;
  return x => {
    const inside = Math.min(x - from, to - x);
    return inside <= 0 ? profile(x) : profile(x) + newtonM2 * Math.min(1, inside / RUN_IN);
  };
}
