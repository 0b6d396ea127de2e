import type { ChainAnswer } from '../numeric/index.ts';
import { GRAVITY } from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';
import {
  CONTROLS,
  EDGE,
  LEAN,
  LEAN_RATE,
  LEG_SPEED,
  MISMATCH,
  OFFSET,
  PUSH,
  SPEED,
  STATES,
  TURNED,
} from './line-model.ts';
import type { LinePlace } from './reference-line.ts';

/** States that change sign from one side to the other. */
export const MIRRORED: readonly number[] = [OFFSET, TURNED, LEAN, LEAN_RATE, EDGE, MISMATCH];
const MIRRORED_CONTROLS = [0, 1];

/** Share of the pull of the slope that speeds a skier up who is slower than the rhythm. */
const GAINING = 0.6;

/**
 * A first guess for a whole set: the half period of a rhythm laid along every piece, mirrored where the set turns
 * the other way, unfolding from the start and folding into the finish, slower where the skier is still gaining speed.
 *
 * @param turns −1 where the piece begins by turning left, +1 right; 0 for the piece from the start
 * @param ends the same for the piece's end; 0 for the piece into the finish
 */
export function setGuess(
  pattern: ChainAnswer,
  perPiece: number,
  turns: readonly number[],
  ends: readonly number[],
  places: readonly LinePlace[],
  startSpeed: number,
  { slope }: LineConditions,
): { x: Float64Array; u: Float64Array } {
  const n = STATES.length;
  const m = CONTROLS.length;
  const pieces = turns.length;
  const x = new Float64Array((pieces * perPiece + 1) * n);
  const u = new Float64Array(pieces * perPiece * m);
  const patternStages = pattern.x.length / n - 1;
  let energy = startSpeed ** 2;
  for (let k = 0; k <= pieces * perPiece; k++) {
    const piece = Math.min(pieces - 1, Math.floor(k / perPiece));
    const part = k / perPiece - piece;
    const { phase, sign } = phaseOf(turns[piece], ends[piece], part);
    const from = Math.min(patternStages, Math.round(phase * patternStages));
    for (let i = 0; i < n; i++) {
      x[k * n + i] = pattern.x[from * n + i] * (MIRRORED.includes(i) ? sign : 1);
    }
    if (k < pieces * perPiece) {
      const stage = Math.min(patternStages - 1, from);
      for (let i = 0; i < m; i++) {
        u[k * m + i] = pattern.u[stage * m + i] * (MIRRORED_CONTROLS.includes(i) ? sign : 1);
      }
    }
    if (k > 0) {
      const run = Math.hypot(places[k].x - places[k - 1].x, places[k].y - places[k - 1].y);
      energy += 2 * GAINING * GRAVITY * slope.sine(places[k].y) * run;
    }
    // Slower than the rhythm leans less, by the square of the speed.
    const paced = x[k * n + SPEED];
    const share = Math.min(1, energy / paced ** 2);
    x[k * n + SPEED] = Math.sqrt(share) * paced;
    for (const i of [LEAN, LEAN_RATE, EDGE, LEG_SPEED, OFFSET, TURNED]) x[k * n + i] *= share;
    x[k * n + PUSH] = 1 + share * (x[k * n + PUSH] - 1);
    if (share === 1) energy = paced ** 2;
  }
  return { x, u };
}

/** Where on the half period, which begins at a pole turned left round, a part of a piece is. */
function phaseOf(turn: number, end: number, part: number): { phase: number; sign: number } {
  if (turn === 0) return { phase: 0.5 + 0.5 * part, sign: end };
  if (end === 0) return { phase: 0.5 * part, sign: -turn };
  if (turn !== end) return { phase: part, sign: -turn };
  // Two turns to the same side: unfold halfway and come back.
  return { phase: 0.5 - Math.abs(part - 0.5), sign: -turn };
}
