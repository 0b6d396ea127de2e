import type { Gate } from '../../../core/course/index.ts';

/** Where nothing tells how far apart gates stand, m. */
const USUAL_SPACING = 10;
const USUAL_OFFSET = 1.5;

/** A gate that goes on below the one at `at`: midway to the next, or a gate interval below the last. */
export function gateAfter(gates: readonly Gate[], at: number): Gate {
  const labels = new Set(gates.map(gate => gate.label));
  let number = gates.length + 1;
  while (labels.has(String(number))) number += 1;
  const label = String(number);
  const here = gates[at];
  if (!here) return { label, x: USUAL_OFFSET, y: USUAL_SPACING, colour: 'red', turn: null };
  const next = gates[at + 1];
  const before = gates[at - 1];
  const spacing = before ? here.y - before.y : USUAL_SPACING;
  const round = (value: number) => Math.round(value * 10) / 10;
  return {
    label,
    x: round(next ? (here.x + next.x) / 2 : before ? before.x : -here.x),
    y: next ? (here.y + next.y) / 2 : round(here.y + spacing),
    colour: here.colour === 'red' ? 'blue' : here.colour === 'blue' ? 'red' : here.colour,
    turn: null,
  };
}
