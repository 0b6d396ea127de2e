import {
  type ChainQuestion,
  type CoachWords,
  type DynamicMoment,
  dynamicMoment,
  explainMoment,
  momentWords,
  OUTER_SHARE,
  Phase,
  type Track,
  type TurnBasis,
  type TurnRadius,
  turnOf,
} from '../../../core/run/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { radiusOf } from '../../rack/radius.ts';
import { groundOf } from './run-plan.ts';
import type { PairRun } from './runs.ts';

const ROUNDING = 1e-6;

const turns = new WeakMap<TurnBasis, TurnRadius>();

export function turnRadiusOf(basis: TurnBasis): TurnRadius {
  const known = turns.get(basis) ?? turnOf(basis);
  turns.set(basis, known);
  return known;
}

/** The instant of a run as a question to the coach's chain. */
export function questionAt({ pair, plan, track }: PairRun, row: number): ChainQuestion {
  const edge = track.edge[row]!;
  const banked = plan.programme.kind === 'banked';
  return {
    turn: turnRadiusOf(plan.turn),
    // A banked turn holds with nothing to spare; rounding must not read as a skid.
    edgeAngle: Math.abs(edge) + (banked ? ROUNDING : 0),
    speed: track.speed[row]!,
    mass: plan.mass,
    slope: Math.asin(groundOf(plan.ground).sine(track.y[row]!)),
    pastFallLine: track.heading[row]! * Math.sign(edge),
    // Ideal carving tilts the base-edge face itself with the lean, whatever the bevel.
    baseBevel: banked ? 0 : plan.baseBevel,
    outerShare: OUTER_SHARE,
    sidecutRadius: radiusOf(pair.pair) ?? 0,
  };
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

/** Row of the least hold. */
export function leastHoldRow(track: Track): number {
  return extremeRow(track, row => -track.hold[row]!);
}

function extremeRow(track: Track, of: (row: number) => number): number {
  let best = -1;
  for (let row = 0; row < track.t.length; row++) {
    if (onEdge(track, row) && (best < 0 || of(row) > of(best))) best = row;
  }
  return Math.max(0, best);
}
