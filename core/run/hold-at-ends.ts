/**
 * Hold at the tip and the tail along a run: twist lowers the edge angle there, so they let go first.
 */

import { USUAL } from '../conditions/index.ts';
import type { Track } from './track.ts';
import type { TurnRadius } from './turn-radius.ts';

/**
 * Hold at the two ends in every row, rad: the hold under the boot less the twist at that end. Equal to
 * `track.hold` for a ski rigid in torsion. Looked up here and not on the way down: most askers need it for no
 * row or for one.
 *
 * @param turn the same the run was made with
 * @param outerShare part of the load on the outer ski, likewise
 */
export function holdAtEnds(
  track: Pick<Track, 'hold' | 'edge' | 'load'>,
  turn: TurnRadius,
  outerShare = USUAL.outerShare,
): { readonly tip: Float64Array; readonly tail: Float64Array } {
  const less = (twist: ((edgeAngle: number, load: number) => number) | undefined) =>
    twist
      ? track.hold.map((hold, i) => {
          // No load in the air, and so no twist.
          const load = outerShare * track.load[i];
          return load > 0 ? hold - twist(Math.abs(track.edge[i]), load) : hold;
        })
      : track.hold.slice();
  return { tip: less(turn.twistTip), tail: less(turn.twistTail) };
}
