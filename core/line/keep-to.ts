/** A line drawn through the gates, as bounds on where the skis may be: how quickly that line itself can be ridden. */

import type { LineChain } from './line-chain.ts';
import { OFFSET, STATES } from './line-model.ts';
import type { SetQuestion } from './set-question.ts';

/** Bounds the offset at every node to that of a drawn line, where the line passes beside the node. */
export function keepTo(
  { points, within }: NonNullable<SetQuestion['along']>,
  { places }: LineChain,
  low: Float64Array,
  high: Float64Array,
): void {
  for (const [k, { x, y, heading }] of places.entries()) {
    const across = offsetOf(points, x, y, heading);
    if (across === null) continue;
    const at = k * STATES.length + OFFSET;
    low[at] = Math.max(low[at], across - within);
    high[at] = Math.min(high[at], across + within);
  }
}

/** How far to the right of a place a line passes it, m; null where it does not. */
function offsetOf(
  points: readonly { readonly x: number; readonly y: number }[],
  x: number,
  y: number,
  heading: number,
): number | null {
  const [sin, cos] = [Math.sin(heading), Math.cos(heading)];
  const local = points.map(point => ({
    along: (point.x - x) * sin + (point.y - y) * cos,
    across: (point.x - x) * cos - (point.y - y) * sin,
  }));
  let nearest: number | null = null;
  for (let i = 0; i + 1 < local.length; i++) {
    const [a, b] = [local[i], local[i + 1]];
    if (a.along > 0 === b.along > 0) continue;
    const across = a.across + ((b.across - a.across) * a.along) / (a.along - b.along);
    if (nearest === null || Math.abs(across) < Math.abs(nearest)) nearest = across;
  }
  return nearest;
}
