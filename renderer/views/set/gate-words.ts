import type { Gate, GateMode } from '../../../core/course/index.ts';
import { formatQuantity, type System } from '../../format/index.ts';

/** How a pair gets round a gate, as people say it. */
export const MODE_WORDS: Record<GateMode, string> = {
  carves: 'carves',
  'tight arcs': 'tighter arc',
  drifts: 'drifts',
};

/** A distance on the set, to the centimetre a tape gives. */
export const metres = (held: number, system: System): string =>
  formatQuantity(held, 'distance', { system, decimals: system === 'metric' ? 2 : 1 }).text;

export function placeText(gate: Gate, system: System): string {
  const side = gate.x === 0 ? 'in the middle' : gate.x > 0 ? 'to the right' : 'to the left';
  const across = gate.x === 0 ? side : `${metres(Math.abs(gate.x), system)} ${side}`;
  return `${across}, ${metres(gate.y, system)} down`;
}
