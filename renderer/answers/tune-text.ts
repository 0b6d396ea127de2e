import type { TuneEntry } from '../../core/pair/index.ts';

/** An entry in one line: "side 87°, base 0.5°, wax cold". */
export function tuneText(entry: TuneEntry): string {
  return [
    entry.sideAngleDeg !== undefined && `side ${entry.sideAngleDeg}°`,
    entry.baseBevelDeg !== undefined && `base ${entry.baseBevelDeg}°`,
    entry.wax && `wax ${entry.wax}`,
    entry.structure && `structure ${entry.structure}`,
    entry.note,
  ]
    .filter(Boolean)
    .join(', ');
}

/** The latest day first; of one day, the last added first. */
export const byLatest = (tunes: readonly TuneEntry[]): TuneEntry[] =>
  [...tunes].reverse().sort((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
