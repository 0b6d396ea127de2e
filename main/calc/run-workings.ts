import type { Ski } from '../../core/pair/index.ts';
import { explainChain, OUTER_SHARE, Phase, type Track, type TurnRadius } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import type { Working } from '../../core/working/index.ts';

/**
 * The chain from edge angle to hold at the moment of the greatest load. Moments at which the edge holds come
 * first: while it slips, the turn that the chain asks for is not the one that is made. Empty when the ski is on
 * no edge.
 */
export function runWorkings(
  ski: Ski,
  turn: TurnRadius,
  track: Track,
  { mass, slope }: { readonly mass: number; readonly slope: number },
): Working[] {
  const row = hardestRow(track, Phase.Holding) ?? hardestRow(track, Phase.Slipping);
  if (row === null) return [];
  const [first, ...rest] = explainChain({
    turn,
    edgeAngle: Math.abs(track.edge[row]),
    speed: track.speed[row],
    mass,
    slope,
    pastFallLine: track.heading[row] * Math.sign(track.edge[row]),
    baseBevel: ski.baseBevel,
    outerShare: OUTER_SHARE,
    sidecutRadius: sidecut(ski).radius,
  });
  const edge = track.phase[row] === Phase.Holding ? 'holds' : 'slips';
  const moment = `At t = ${track.t[row].toFixed(2)} s, the greatest load while the edge ${edge}.`;
  return [{ ...first, note: first.note ? `${moment} ${first.note}` : moment }, ...rest];
}

function hardestRow({ t, phase, load }: Track, wanted: Phase): number | null {
  let hardest: number | null = null;
  for (let row = 0; row < t.length; row++) {
    if (phase[row] === wanted && (hardest === null || load[row] > load[hardest])) hardest = row;
  }
  return hardest;
}
