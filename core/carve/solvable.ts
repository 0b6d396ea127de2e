import { type Field, faultIn, fieldsOf, rowOf, saidOf, unitSaid } from '../conditions/index.ts';
import { MM } from '../units/index.ts';
import type { CarveConditions, CarvingSki } from './groove.ts';

/** How far ahead or behind a load may stand is the ski's to say. */
const ASKED = fieldsOf('edge', 'snow').filter(field => field !== 'foreMm');
const mm = (metres: number) => `${Number((metres / MM).toFixed(1))} mm`;

/** What stands in the way of solving, naming the input, its value and what is accepted; null when nothing. */
export function whatCannotBeSolved(ski: CarvingSki, conditions: CarveConditions): string | null {
  const out = faultIn(conditions, ASKED);
  if (out !== null) return outWords(conditions, ASKED.find(field => rowOf(field).si === out.field)!);
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

function outWords(conditions: CarveConditions, field: Field): string {
  const { si, least, most } = rowOf(field);
  const found = saidOf(field, (conditions as unknown as Record<string, number>)[si]!);
  return `${si}: ${found} ${unitSaid(field)} found; accepted: ${least} to ${most} ${unitSaid(field)}`;
}
