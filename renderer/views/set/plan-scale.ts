import type { Gate } from '../../../core/course/index.ts';

/**
 * The slope laid on its side and seen from above: downhill runs to the right of the screen, so the skier's
 * right is towards its foot. Nothing is mirrored. Distances across may be stretched by a stated whole number.
 */
export interface PlanScale {
  /** px for metres down the hill and across it. */
  down(y: number): number;
  across(x: number): number;
  /** Metres for px. */
  invertDown(px: number): number;
  invertAcross(px: number): number;
  /** How much longer across is drawn than down. */
  readonly times: number;
  readonly perMetre: number;
  /** px from one gate in view to the next, in the middle. */
  readonly perGate: number;
  /** Gates in view, first and last. */
  readonly from: number;
  readonly to: number;
}

export interface PlanBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Line and poles stand a little outside the gates, m. */
const ROOM_ACROSS = 1.2;

export function planScale(
  gates: readonly Gate[],
  box: PlanBox,
  selected: number,
  inView: number,
  trueScale: boolean,
): PlanScale {
  const count = inView === 0 ? gates.length : Math.min(inView, gates.length);
  const from = Math.max(0, Math.min(gates.length - count, selected - Math.floor((count - 1) / 2)));
  const to = from + count - 1;
  const shown = gates.slice(from, to + 1);
  const interval = count > 1 ? (shown[count - 1].y - shown[0].y) / (count - 1) : 10;
  const start = shown[0].y - interval;
  const end = shown[count - 1].y + interval;
  const least = Math.min(...shown.map(gate => gate.x)) - ROOM_ACROSS;
  const most = Math.max(...shown.map(gate => gate.x)) + ROOM_ACROSS;
  const high = box.bottom - box.top;
  const along = (box.right - box.left) / (end - start);
  const fits = high / ((most - least) * along);
  const times = trueScale ? 1 : Math.max(1, Math.min(20, Math.floor(fits)));
  // A set wider than the drawing is high is drawn smaller both ways.
  const perMetre = Math.min(along, high / ((most - least) * times));
  const middleX = (box.left + box.right) / 2;
  const middleY = (box.top + box.bottom) / 2;
  const centreDown = (start + end) / 2;
  const centreAcross = (least + most) / 2;
  return {
    down: y => middleX + (y - centreDown) * perMetre,
    across: x => middleY + (x - centreAcross) * perMetre * times,
    invertDown: px => centreDown + (px - middleX) / perMetre,
    invertAcross: px => centreAcross + (px - middleY) / (perMetre * times),
    times,
    perMetre,
    perGate: interval * perMetre,
    from,
    to,
  };
}

/**
 * Where a gate may go, m down the hill: not past its neighbours nor nearer than a metre to them, but where it
 * stands it may always stay, as gates of a file may be closer.
 */
export function roomDown(gates: readonly Gate[], at: number): readonly [least: number, most: number] {
  const { y } = gates[at];
  const before = gates[at - 1];
  const after = gates[at + 1];
  return [Math.min(y, before ? before.y + 1 : -1e4), Math.max(y, after ? after.y - 1 : 1e4)];
}
