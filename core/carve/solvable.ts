import type { CarveConditions, CarvingSki } from './groove.ts';
import { REBOUND, REBOUND_SPAN } from './snow-law.ts';

const DEGREE = Math.PI / 180;
const mm = (metres: number) => `${Number((1000 * metres).toFixed(1))} mm`;

/** What stands in the way of solving, naming the input, its value and what is accepted; null when nothing. */
export function whatCannotBeSolved(ski: CarvingSki, conditions: CarveConditions): string | null {
  const { edgeAngle, load, hardness, fore, rebound = REBOUND } = conditions;
  if (!(edgeAngle >= 0.5 * DEGREE && edgeAngle <= 85 * DEGREE)) {
    return `edgeAngle: ${edgeAngle / DEGREE} degrees found; accepted: 0.5 to 85 degrees`;
  }
  if (!(load > 0 && load <= 20_000)) return `load: ${load} N found; accepted: above 0 to 20000 N`;
  if (!(hardness >= 0.01e9 && hardness <= 200e9)) {
    return `hardness: ${hardness / 1e9} N/mm³ found; accepted: 0.01 to 200 N/mm³`;
  }
  const { from, to } = REBOUND_SPAN;
  // A hair's breadth of slack: the bounds are in millimetres, the rebound in metres.
  if (!(rebound >= 0.999_999e-3 * from && rebound <= 1.000_001e-3 * to)) {
    return `rebound: ${rebound * 1e3} mm found; accepted: ${from} to ${to} mm`;
  }
  const rear = ski.bootCentre - ski.soleLength / 2;
  const front = ski.bootCentre + ski.soleLength / 2;
  if (!(rear >= 0 && front <= ski.edge.length && ski.soleLength > 0)) {
    return `bootCentre: ${mm(ski.bootCentre)} found; accepted: the sole of ${mm(ski.soleLength)} within 0 to ${mm(ski.edge.length)}`;
  }
  if (!(Math.abs(fore) <= 0.25 * ski.edge.length)) {
    return `fore: ${mm(fore)} found; accepted: at most ${mm(0.25 * ski.edge.length)} either way`;
  }
  return null;
}
