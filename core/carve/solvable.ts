import { type AcceptedRange, type FieldFault, isAccepted, numberFound } from '../fault/index.ts';
import type { CarveConditions, CarvingSki } from './groove.ts';
import { REBOUND, REBOUND_SPAN } from './snow-law.ts';

const DEGREE = Math.PI / 180;
/** What stands in the way of solving; null when nothing. */
export function unsupportedReason(ski: CarvingSki, conditions: CarveConditions): FieldFault | null {
  const { edgeAngle, load, hardness, fore, rebound = REBOUND } = conditions;
  const { length } = ski.edge;
  const { from, to } = REBOUND_SPAN;
  const ranges: readonly (readonly [field: string, value: number, range: AcceptedRange])[] = [
    ['edgeAngle', edgeAngle, { from: 0.5 * DEGREE, to: 85 * DEGREE, quantity: 'angle' }],
    ['load', load, { above: 0, to: 20_000, quantity: 'force' }],
    ['hardness', hardness, { from: 0.01e9, to: 200e9, quantity: 'hardness' }],
    // Twelve digits: the bounds are in millimetres, the rebound in metres.
    ['rebound', Number((rebound * 1e3).toPrecision(12)), { from, to, unit: 'mm' }],
    ['soleLength', ski.soleLength, { above: 0, quantity: 'skiLength' }],
    [
      'bootCentre',
      ski.bootCentre,
      { from: ski.soleLength / 2, to: length - ski.soleLength / 2, quantity: 'station' },
    ],
    ['fore', fore, { from: -0.25 * length, to: 0.25 * length, quantity: 'station' }],
  ];
  const bad = ranges.find(([, value, range]) => !isAccepted(value, range));
  if (!bad) return null;
  const [field, value, accepted] = bad;
  return { field, found: numberFound(value, accepted), accepted };
}
