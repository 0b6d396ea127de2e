import { fieldsOf, whatIsOut } from '../conditions/index.ts';
import { MM } from '../units/index.ts';
import type { CarveConditions, CarvingSki } from './groove.ts';

const ASKED = fieldsOf('edge', 'snow');
const mm = (metres: number) => `${Number((metres / MM).toFixed(1))} mm`;

/** What stands in the way of solving, naming the input, its value and what is accepted; null when nothing. */
export function whatCannotBeSolved(ski: CarvingSki, conditions: CarveConditions): string | null {
  const out = whatIsOut(conditions, ASKED);
  if (out !== null) return out;
  const { fore } = conditions;
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
