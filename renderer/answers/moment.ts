import {
  type CoachWords,
  type DynamicMoment,
  dynamicMoment,
  explainMoment,
  momentWords,
  Phase,
  type Track,
  type TurnBasis,
  type TurnRadius,
  turnOf,
} from '../../core/run/index.ts';
import { GRIP_FROM } from '../../core/skier/index.ts';
import type { Working } from '../../core/working/index.ts';
import { groundOf } from './jobs/run-plan.ts';
import type { PairRun } from './runs.ts';
import { radiusOf } from './sidecut.ts';

const turns = new WeakMap<TurnBasis, TurnRadius>();

export function turnRadiusOf(basis: TurnBasis): TurnRadius {
  const known = turns.get(basis) ?? turnOf(basis);
  turns.set(basis, known);
  return known;
}

export interface Explained {
  readonly moment: DynamicMoment;
  readonly words: CoachWords;
  readonly chain: readonly Working[];
}

/** The chain at a row; null where the ski is on no edge. */
export function explainedAt(run: PairRun, row: number): Explained | null {
  if (!onEdge(run.track, row)) return null;
  const { mass } = run.plan;
  const moment = dynamicMoment(run.track, row, { profile: groundOf(run.plan.ground), mass });
  const chain = explainMoment({
    moment,
    mass,
    // Skis that follow the lean have their base-edge face tilted with it, whatever the bevel.
    baseBevel: run.plan.programme.kind === 'banked' ? 0 : run.plan.baseBevel,
    sidecutRadius: radiusOf(run.pair.pair) ?? 0,
    contactLength: run.plan.contactLength,
  });
  return { moment, words: momentWords(moment, mass), chain };
}

export const onEdge = (track: Track, row: number): boolean =>
  track.phase[row] === Phase.Holding || track.phase[row] === Phase.Slipping;

/** Row of the greatest load. */
export function hardestRow(track: Track): number {
  return extremeRow(track, row => track.loadBodyWeights[row]!);
}

/** Whether grip is judged in a row: on an edge that no longer changes sides. */
export const gripJudged = (track: Track, row: number): boolean =>
  onEdge(track, row) && Math.abs(track.edge[row]!) >= GRIP_FROM;

/** Row of the weakest grip; the hardest row where grip is judged nowhere. */
export function weakestRow(track: Track): number {
  const row = extremeRow(track, at => (gripJudged(track, at) ? -track.hold[at]! : -Infinity));
  return gripJudged(track, row) ? row : hardestRow(track);
}

/** Least grip to spare where it is judged, rad; null where it is nowhere. */
export function leastGrip(track: Track): number | null {
  const row = weakestRow(track);
  return gripJudged(track, row) ? track.hold[row]! : null;
}

function extremeRow(track: Track, of: (row: number) => number): number {
  let best = -1;
  for (let row = 0; row < track.t.length; row++) {
    if (onEdge(track, row) && (best < 0 || of(row) > of(best))) best = row;
  }
  return Math.max(0, best);
}
