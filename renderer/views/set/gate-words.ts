import type { Gate } from '../../../core/course/index.ts';
import { formatQuantity, type System } from '../../../core/units/index.ts';
import { t } from '../../state/index.ts';

/** A distance on the set, to the centimetre a tape gives. */
const metres = (held: number, system: System): string =>
  formatQuantity(held, 'distance', { system, decimals: system === 'metric' ? 2 : 1 }).text;

/** "1.4 m to the right, 28.6 m down". */
export function placeText(gate: Gate, system: System): string {
  const side = gate.x === 0 ? 'middle' : gate.x > 0 ? 'right' : 'left';
  return t('set.placeOf', {
    side,
    across: metres(Math.abs(gate.x), system),
    down: metres(gate.y, system),
  });
}

/** A gate's name where there is little room. */
export const shortName = (label: string): string => (label.length > 8 ? `${label.slice(0, 7)}…` : label);
