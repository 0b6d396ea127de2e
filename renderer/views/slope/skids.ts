import { Phase, type Track } from '../../../core/run/index.ts';

/** A stretch of time, s. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Shorter breaks between two skids are told as one skid. */
const BREAK_S = 0.06;

/** When a track was in a phase; by default when it slid. */
export function stretchesOf(track: Track, phase: Phase = Phase.Slipping): Stretch[] {
  const found: { from: number; to: number }[] = [];
  const { t, phase: phases } = track;
  for (let i = 0; i < t.length; i++) {
    if (phases[i] !== phase) continue;
    const last = found.at(-1);
    const to = t[Math.min(i + 1, t.length - 1)]!;
    if (last && t[i]! - last.to < BREAK_S) last.to = to;
    else found.push({ from: t[i]!, to });
  }
  return found;
}

const seconds = (value: number) => value.toFixed(1);

/** Where the ski slips, in words. */
export function skidWords(stretches: readonly Stretch[]): string {
  if (stretches.length === 0) return 'The edge holds all the way.';
  const told = stretches.slice(0, 3).map(({ from, to }) => `${seconds(from)}–${seconds(to)} s`);
  const more = stretches.length - told.length;
  const rest = more > 0 ? ` and ${more} more` : '';
  return `The ski slips off its arc at ${told.join(', ')}${rest}: the groove widens to a skid mark.`;
}

/** What the ski is doing at a row, in words. */
export function phaseWords(track: Track, row: number): string {
  switch (track.phase[row]) {
    case Phase.Slipping:
      return 'slips: the path is not its own';
    case Phase.Airborne:
      return 'in the air';
    case Phase.Flat:
      return 'rolls through flat';
    default:
      return 'carves: the edge holds';
  }
}

/** The last row not later than `time`. */
export function rowAt(track: Track, time: number): number {
  const { t } = track;
  let low = 0;
  let high = t.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (t[middle]! <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}
