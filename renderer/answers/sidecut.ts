import { sidecut } from '../../core/shape/index.ts';
import { perPair, ski } from '../state/index.ts';

/** Everything about a pair's sidecut, remembered per pair. */
export const sidecutOf = perPair(pair => sidecut(ski(pair)));

/** The sidecut radius in m; null when the edge is straight or its widths make no arc. */
export function radiusOf(pair: Parameters<typeof sidecutOf>[0]): number | null {
  const { radius } = sidecutOf(pair);
  return Number.isFinite(radius) && radius > 0 ? radius : null;
}
