import { bisectRight } from 'd3';
import { Phase, type Track } from '../../../core/run/index.ts';
import { t } from '../../state/index.ts';

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

/** The first three stretches, and how many more there are. */
function whenOf(stretches: readonly Stretch[]): { times: string[]; more: number } {
  const times = stretches.slice(0, 3).map(({ from, to }) => `${seconds(from)}–${seconds(to)} s`);
  return { times, more: stretches.length - times.length };
}

/** When the skis were off the snow, in words; empty when never. */
export function airWords(track: Track): string {
  const flights = stretchesOf(track, Phase.Airborne);
  if (flights.length === 0) return '';
  return t('slope.offSnow', whenOf(flights));
}

/** Where the ski slips, in words. */
export function skidWords(stretches: readonly Stretch[]): string {
  if (stretches.length === 0) return t('slope.carvesAllTheWay');
  return t('slope.letsGoAt', whenOf(stretches));
}

/** What the ski is doing at a row, in words. */
export function phaseWords(track: Track, row: number): string {
  switch (track.phase[row]) {
    case Phase.Slipping:
      return t('slope.phase.slipping');
    case Phase.Airborne:
      return t('slope.phase.airborne');
    case Phase.Flat:
      return t('slope.phase.flat');
    default:
      return t('slope.phase.carving');
  }
}

/** The last row not later than `time`. */
export function rowAt(track: Track, time: number): number {
  return Math.max(0, bisectRight(track.t, time) - 1);
}
