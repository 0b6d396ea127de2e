import type { Gate } from './gates.ts';

/** The side each gate turns to: as written, else as the neighbouring poles show, else opposite the last. */
export function gateTurns(gates: readonly Gate[]): Int8Array {
  if (gates.length === 0) return new Int8Array(0);
  const poles = withEnds(gates);
  const turns = new Int8Array(gates.length);
  gates.forEach((gate, i) => {
    const [before, at, after] = [poles[i], poles[i + 1], poles[i + 2]];
    const change = Math.atan2(after.x - at.x, after.y - at.y) - Math.atan2(at.x - before.x, at.y - before.y);
    turns[i] = gate.turn ?? (Math.abs(change) > 0.02 ? Math.sign(change) : i > 0 ? -turns[i - 1] : 1);
  });
  return turns;
}

/** One point a gate interval above the first gate and one below the last, on the middle of the set there. */
function withEnds(gates: readonly Gate[]): { x: number; y: number }[] {
  const last = gates.length - 1;
  const middle = (a: number, b: number): number => (gates[a].x + gates[b].x) / 2;
  const second = Math.min(1, last);
  return [
    { x: middle(0, second), y: gates[0].y - Math.max(gates[second].y - gates[0].y, 2) },
    ...gates,
    {
      x: middle(last, last - second),
      y: gates[last].y + Math.max(gates[last].y - gates[last - second].y, 2),
    },
  ];
}
