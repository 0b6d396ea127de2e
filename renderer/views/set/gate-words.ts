import type { Gate, GateMode } from '../../../core/course/index.ts';
import { formatQuantity, type System } from '../../../core/units/index.ts';

/** How a pair gets round a gate, as people say it. */
export const MODE_WORDS: Record<GateMode, string> = {
  carves: 'carves',
  'tight arcs': 'tighter arc',
  drifts: 'drifts',
};

/** A distance on the set, to the centimetre a tape gives. */
const metres = (held: number, system: System): string =>
  formatQuantity(held, 'distance', { system, decimals: system === 'metric' ? 2 : 1 }).text;

export function placeText(gate: Gate, system: System): string {
  const side = gate.x === 0 ? 'in the middle' : gate.x > 0 ? 'to the right' : 'to the left';
  const across = gate.x === 0 ? side : `${metres(Math.abs(gate.x), system)} ${side}`;
  return `${across}, ${metres(gate.y, system)} down`;
}

/** "1 gate", "56 gates". */
export const gateCount = (count: number): string => `${count} ${count === 1 ? 'gate' : 'gates'}`;

/** A gate's name where there is little room. */
export const shortName = (label: string): string => (label.length > 8 ? `${label.slice(0, 7)}…` : label);
