/**
 * When the ski bites, what the shelf can give, and how the change from one turn to the next is judged.
 */

import { GRAVITY } from './balance.ts';
import { type EdgeProgramme, smoothStep } from './edge-programme.ts';

/** Edge angle over which the bite grows from nothing to the whole arc, rad (3°; a choice, not a measurement). */
export const BITE_BLEND = (3 * Math.PI) / 180;

/**
 * Share of the edge's curvature that the ski takes up: 0 up to the base bevel, 1 from `BITE_BLEND` beyond it.
 *
 * The cosine rule alone gives the full sidecut radius at an edge angle of zero, and so a jump from a right arc
 * to a left one as the ski rolls through flat. A flat ski has no edge in the snow and turns neither way.
 */
export function biteFraction(edgeAngle: number, baseBevel: number): number {
  return smoothStep((edgeAngle - baseBevel) / BITE_BLEND);
}

/** Greatest sideways force of the shelf, N: F_N tan(θ − b). */
export function shelfForce(normal: number, edgeAngle: number, baseBevel: number): number {
  return edgeAngle > baseBevel ? normal * Math.tan(edgeAngle - baseBevel) : 0;
}

/** Height of the skier's mass over the snow, m, which sets the pace of a fall from side to side (a choice). */
export const MASS_HEIGHT = 1;

/** No more than this share of a turn is given to the change of edge at either end of it. */
const CHANGEOVER_SHARE = 0.25;

/**
 * The stretches [from, to] of a programme in which the skier is passing from one turn to the next, flattened to
 * from₀, to₀, from₁, to₁, … in the programme's own measure and merged where they touch.
 *
 * Why they are needed: a steady balance at edge angles near zero would need a lean near zero at full speed on a
 * curved track, so every change of edge would read as a skid. What really happens is that the mass crosses over
 * the skis: for as long as an inverted pendulum takes to fall (√(h/g), 0.32 s for h = 1 m) its path and that of
 * the skis differ, and the skis lie light. In that time on either side of the change, and for no more than a
 * quarter of a turn, the skis follow their edges and the snow is asked for no more than the shelf gives; what
 * is missing is the crossing of the mass. Outside, hold is judged in full: a turn that cannot be balanced, or a
 * roll so slow that the ski is asked to hold long before it has the angle, still skids. Ideal carving (banked)
 * tilts the skis with the lean and needs none of this.
 *
 * @param startSpeed m/s, turns the pendulum's time into a distance for programmes over distance
 */
export function changeoverStretches(programme: EdgeProgramme, startSpeed: number): Float64Array {
  const pace = Math.sqrt(MASS_HEIGHT / GRAVITY) * (programme.per === 'time' ? 1 : startSpeed);
  const { changeovers, end } = programme;
  const flat: number[] = [];
  for (let i = 0; i < changeovers.length; i++) {
    const at = changeovers[i];
    const before = at - (changeovers[i - 1] ?? 0);
    const after = (changeovers[i + 1] ?? end) - at;
    const from = Math.max(0, at - Math.min(pace, CHANGEOVER_SHARE * before));
    const to = Math.min(end, at + Math.min(pace, CHANGEOVER_SHARE * after));
    if (flat.length > 0 && from <= flat[flat.length - 1]) flat[flat.length - 1] = to;
    else if (to > from) flat.push(from, to);
  }
  return Float64Array.from(flat);
}

/** Whether `at` lies in one of the stretches, their ends counted to the side that follows. */
export function inChangeover(stretches: Float64Array, at: number): boolean {
  for (let i = 0; i < stretches.length; i += 2) {
    if (at >= stretches[i] - 1e-7 && at < stretches[i + 1] - 1e-7) return true;
  }
  return false;
}
