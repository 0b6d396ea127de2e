import type { PlainKey } from '../../../core/language/index.ts';
import type { HeldBackBy, LineRun } from '../../../core/line/index.ts';
import { t } from '../../state/index.ts';

type Words = readonly [name: PlainKey, inline: PlainKey, reason: PlainKey];

const WORDS: Readonly<Record<Exclude<HeldBackBy, 'nothing'>, Words>> = {
  push: ['slope.limit.push', 'slope.limitInline.push', 'slope.limitReason.push'],
  'push rate': ['slope.limit.pushRate', 'slope.limitInline.pushRate', 'slope.limitReason.pushRate'],
  'leg speed': ['slope.limit.legSpeed', 'slope.limitInline.legSpeed', 'slope.limitReason.legSpeed'],
  'leg length': ['slope.limit.legLength', 'slope.limitInline.legLength', 'slope.limitReason.legLength'],
  'edge angle': ['slope.limit.edgeAngle', 'slope.limitInline.edgeAngle', 'slope.limitReason.edgeAngle'],
  'edge rate': ['slope.limit.edgeRate', 'slope.limitInline.edgeRate', 'slope.limitReason.edgeRate'],
  hold: ['slope.limit.hold', 'slope.limitInline.hold', 'slope.limitReason.hold'],
  wall: ['slope.limit.wall', 'slope.limitInline.wall', 'slope.limitReason.wall'],
  angulation: ['slope.limit.angulation', 'slope.limitInline.angulation', 'slope.limitReason.angulation'],
  drift: ['slope.limit.drift', 'slope.limitInline.drift', 'slope.limitReason.drift'],
};

export type Limit = keyof typeof WORDS;
export const LIMITS = Object.keys(WORDS) as Limit[];

/** A limit by its short name, on a band or at the head of a line. */
export const limitName = (by: Limit): string => t(WORDS[by][0]);

/** The same within a sentence. */
export const limitInline = (by: Limit): string => t(WORDS[by][1]);

/** The reason it gives why a turn is no quicker. */
export const limitReason = (by: Limit): string => t(WORDS[by][2]);

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
