/**
 * The wall of the groove: what a turn asks sideways of the snow presses against it, as deep as the edge is in.
 */

import type { Tape, Term } from '../numeric/index.ts';
import { BITE, bite } from './ski-path.ts';

/** The wall that an edge leans on, ∫ e dx along it, m², and its slopes; see core/carve. */
export interface GrooveWall {
  /** Writes [A, A_θ, A_F, A_θθ, A_θF, A_FF] at an edge angle (rad, any sign) and load on this ski (N). */
  wallArea(edgeAngle: number, load: number, out: Float64Array): void;
}

const six = new Float64Array(6);

/** Whether a wall of this strength (N/m²) can break at all: Infinity for a wall that bears everything. */
export function canBreak(ski: GrooveWall, strength: number): boolean {
  ski.wallArea(1, 1000, six);
  return Number.isFinite(strength * six[0]);
}

/**
 * What the wall bears beyond what it is asked, S A/F₁ − F t sinψ in body weights: it fails at a sideways force
 * proportional to depth × length, S ∫ e dx (Mössner et al., J. Glaciol. 2013, 108 shear tests). Sideways is along the
 * snow: taken along the base, F sin(θ − ψ), a ski tilted just as the force leans would ask nothing of the wall, and
 * ice would bear any turn. As far as the edge has bitten, t = tanh(θ/4°); a lean to the other side is the other wall's.
 *
 * @param strength S/F₁ in 1/m², with F₁ the load on the ski at a push of one body weight, `loadPerPush`, N
 */
export function wallRoom(
  t: Tape,
  ski: GrooveWall,
  loadPerPush: number,
  strength: Term,
  edge: Term,
  lean: Term,
  push: Term,
): Term {
  const area = (edgeAngle: number, bodyWeights: number, out: Float64Array) => {
    ski.wallArea(edgeAngle, bodyWeights * loadPerPush, out);
    out[2] *= loadPerPush;
    out[4] *= loadPerPush;
    out[5] *= loadPerPush * loadPerPush;
  };
  const request = t.multiply(push, bite(t, edge), t.sine(lean));
  return t.subtract(t.multiply(strength, t.external(area, edge, push)), request);
}

/**
 * Part of the wall's strength that is used, 0 where the force leans away from it: edge angle and lean in rad, load on
 * this ski in N, strength in N/m². Past one the wall breaks.
 */
export function wallUsed(
  ski: GrooveWall,
  edge: number,
  lean: number,
  load: number,
  strength: number,
): number {
  ski.wallArea(edge, load, six);
  return Math.max(0, (load * Math.tanh(edge / BITE) * Math.sin(lean)) / (strength * six[0]));
}
