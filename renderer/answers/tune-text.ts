import type { TuneEntry } from '../../core/pair/index.ts';
import { t } from '../state/index.ts';

/** An entry in one line: "side 87°, base 0.5°, wax cold". */
export function tuneText(entry: TuneEntry): string {
  return [
    entry.sideAngleDeg !== undefined && t('squad.side', { angle: entry.sideAngleDeg }),
    entry.baseBevelDeg !== undefined && t('squad.base', { angle: entry.baseBevelDeg }),
    entry.wax && t('squad.waxNamed', { wax: entry.wax }),
    entry.structure && t('squad.structureNamed', { structure: entry.structure }),
    entry.note,
  ]
    .filter(Boolean)
    .join(', ');
}

/** The latest day first; of one day, the last added first. */
export const byLatest = (tunes: readonly TuneEntry[]): TuneEntry[] =>
  [...tunes].reverse().sort((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
