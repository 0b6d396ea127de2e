import type { HeldBackBy, LineRun } from '../../../core/line/index.ts';

/** A limit by its short name on bands, and as the reason a turn is no quicker. */
export interface LimitWords {
  readonly name: string;
  readonly reason: string;
}

export const LIMIT_WORDS: Readonly<Record<Exclude<HeldBackBy, 'nothing'>, LimitWords>> = {
  push: { name: 'Strength', reason: 'the legs push as hard as they can' },
  'push rate': { name: 'Quick strength', reason: 'the push builds up and falls as fast as it can' },
  'leg speed': { name: 'Leg speed', reason: 'the legs fold and stretch as fast as they can' },
  'leg length': { name: 'Leg length', reason: 'the legs are as long or as short as they get' },
  'edge angle': { name: 'Edge angle', reason: 'the skis are tipped as far as the skier can' },
  'edge rate': { name: 'Edging speed', reason: 'the skis are tipped as fast as the skier can' },
  hold: { name: 'Grip', reason: 'the edge carries no more lean' },
  wall: { name: 'Wall of snow', reason: 'the wall of snow the edge leans on is about to break' },
  angulation: { name: 'Angulation', reason: 'the body bends sideways as far as it can' },
  drift: {
    name: 'Turning the skis',
    reason: 'the skis are turned off their own arc as fast or as far as they can',
  },
};

export type Limit = keyof typeof LIMIT_WORDS;
export const LIMITS = Object.keys(LIMIT_WORDS) as Limit[];

/** Rows `from` to `to` of a track over which one limit holds the skier back. */
export interface LimitStretch {
  readonly by: Limit;
  readonly from: number;
  readonly to: number;
}

/** Shorter changes of limit than this many rows to either side are drowned by their neighbours. */
const NEIGHBOURS = 3;

/** Where which limit holds the skier back; what flickers from row to row is told as what it mostly is. */
export function limitStretches(heldBackBy: readonly HeldBackBy[]): LimitStretch[] {
  const calm = heldBackBy.map((_, row) => mostOf(heldBackBy, row));
  const found: LimitStretch[] = [];
  for (let from = 0; from < calm.length; ) {
    let to = from;
    while (to + 1 < calm.length && calm[to + 1] === calm[from]) to++;
    const by = calm[from]!;
    if (by !== 'nothing') found.push({ by, from, to: Math.min(to + 1, calm.length - 1) });
    from = to + 1;
  }
  return found;
}

function mostOf(list: readonly HeldBackBy[], at: number): HeldBackBy {
  const counts = new Map<HeldBackBy, number>();
  let best = list[at]!;
  for (let i = Math.max(0, at - NEIGHBOURS); i <= Math.min(list.length - 1, at + NEIGHBOURS); i++) {
    const count = (counts.get(list[i]!) ?? 0) + 1;
    counts.set(list[i]!, count);
    if (count > (counts.get(best) ?? 0)) best = list[i]!;
  }
  return best;
}

/** Limits that are met somewhere, in the order of `LIMITS`. */
export const limitsMet = (stretches: readonly LimitStretch[]): Limit[] =>
  LIMITS.filter(by => stretches.some(stretch => stretch.by === by));

/** Limits worth less than this for one per cent more are not told, s. */
const WORTH_TELLING = 5e-5;

/** What one per cent more of each of the skier's limits saves a gate, largest first; what is next to nothing is left out. */
export function mostWorth(limits: LineRun['limits']): { readonly by: Limit; readonly seconds: number }[] {
  // The bounds of drifting are the model's, not the skier's.
  return limits.flatMap(({ by, seconds }) =>
    by === 'nothing' || by === 'drift' || seconds < WORTH_TELLING ? [] : [{ by, seconds }],
  );
}
