import type { Ski } from '../../core/pair/index.ts';
import { cosineTurn, type TurnRadius } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';

/** The turn a run or a set asks of a ski. */
export function turnOf(ski: Ski): TurnRadius {
  return cosineTurn(sidecut(ski).radius);
}

export const TURN_WORDS = 'Turn radii follow the cosine rule of rigid snow.';
export const NO_ADVICE = 'No advice on how fast or where to ski.';
