import { faultIn, fieldsOf } from '../conditions/index.ts';
import { type AcceptedRange, type FieldFault, isAccepted, numberFound } from '../fault/index.ts';
import type { CarveConditions, CarvingSki } from './groove.ts';

/** How far ahead or behind a load may stand is the ski's to say. */
const ASKED = fieldsOf('edge', 'snow').filter(field => field !== 'foreMm');

/** What stands in the way of solving; null when nothing. */
export function unsupportedReason(ski: CarvingSki, conditions: CarveConditions): FieldFault | null {
  const out = faultIn(conditions, ASKED);
  if (out !== null) return out;
  const { length } = ski.edge;
  const half = ski.soleLength / 2;
  const ranges: readonly (readonly [field: string, value: number, range: AcceptedRange])[] = [
    ['soleLength', ski.soleLength, { above: 0, quantity: 'skiLength' }],
    ['bootCentre', ski.bootCentre, { from: half, to: length - half, quantity: 'station' }],
    ['fore', conditions.fore, { from: -0.25 * length, to: 0.25 * length, quantity: 'station' }],
  ];
  const bad = ranges.find(([, value, range]) => !isAccepted(value, range));
  if (!bad) return null;
  const [field, value, accepted] = bad;
  return { field, found: numberFound(value, accepted), accepted };
}
