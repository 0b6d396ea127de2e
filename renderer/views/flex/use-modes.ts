import type { Bendable } from './beams.ts';
import { useWorked } from './use-worked.ts';
import type { Modes } from './worker.ts';

/** What the modes depend on; a change of name or camber asks for nothing new. */
function keyOf({ id, ski }: Bendable): string {
  const { length, contactLength, tipWidth, waistWidth, tailWidth, waistStation, widthStations } = ski;
  const widths = [length, contactLength, tipWidth, waistWidth, tailWidth, waistStation, widthStations];
  return JSON.stringify([id, widths, ski.bending, ski.torsion, ski.mass, ski.bootCentre, ski.soleLength]);
}

/** Modes in the order of `pairs`; the last known ones while new ones are worked out; null before the first. */
export function useModes(pairs: readonly Bendable[], clamped: boolean): readonly Modes[] | null {
  const ids = `${clamped} ${pairs.map(pair => pair.id).join(' ')}`;
  const key = `${ids} ${pairs.map(keyOf).join(' ')}`;
  const skis = pairs.map(pair => pair.ski);
  const answer = useWorked(key, pairs.length > 0 ? jobs => jobs.modes(skis, clamped) : null);
  return answer?.key.startsWith(ids) && answer.value.length === pairs.length ? answer.value : null;
}
