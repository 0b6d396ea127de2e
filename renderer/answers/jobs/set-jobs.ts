import {
  type CourseConditions,
  type CoursePair,
  type Gate,
  type NoQuickLine,
  type QuickLine,
  quickLine,
  type Ranking,
  rankPairs,
} from '../../../core/course/index.ts';
import { type TurnBasis, turnOf } from '../../../core/run/index.ts';

/** A pair asked about on a set, as plain data; `baseBevel` in rad. */
export interface SetPair {
  readonly id: string;
  readonly name: string;
  readonly turn: TurnBasis;
  readonly baseBevel: number;
}

export interface RankInput {
  readonly pairs: readonly SetPair[];
  readonly gates: readonly Gate[];
  readonly conditions: CourseConditions;
}

export interface RankAnswer {
  readonly ranking: Ranking;
  /** Of the pairs as given, so that the answer can be read when the question has changed. */
  readonly pairs: readonly { readonly id: string; readonly bent: boolean }[];
  readonly gates: readonly Gate[];
  /** Radius carved at each gate, m; pairs as ranked. */
  readonly carvedRadii: readonly (readonly number[])[];
}

export interface QuickLineInput {
  readonly pair: SetPair;
  readonly gates: readonly Gate[];
  readonly conditions: CourseConditions;
}

/** A quick line is found or given up within this many rounds. */
const ROUNDS = 40;

function rank({ pairs, gates, conditions }: RankInput, progress: (share: number) => void): RankAnswer {
  const known: CoursePair[] = pairs.map(({ name, turn, baseBevel }) => ({
    name,
    turn: turnOf(turn),
    baseBevel,
  }));
  const ranking = rankPairs(known, gates, conditions, {}, progress);
  const { outerShare: share } = conditions;
  return {
    ranking,
    pairs: pairs.map(({ id, turn }) => ({ id, bent: 'table' in turn })),
    gates,
    carvedRadii: ranking.pairs.map(({ index, report }) =>
      report.gates.map(({ edge, load }) => known[index].turn.radius(edge, share * load)),
    ),
  };
}

/** Work of the Set view. */
export const setJobs = {
  /** Up to four pairs down a set: answers along the drag of a gate. */
  rankChosen: (input: RankInput, progress: (share: number) => void): RankAnswer => rank(input, progress),

  /** A whole rack down a set. */
  rankRack: (input: RankInput, progress: (share: number) => void): RankAnswer => rank(input, progress),

  /** The least time one pair could take through the gates. */
  quickLineOf(input: QuickLineInput, progress: (share: number) => void): QuickLine | NoQuickLine {
    const { pair, gates, conditions } = input;
    return quickLine({
      gates,
      conditions,
      turn: turnOf(pair.turn),
      baseBevel: pair.baseBevel,
      progress(round) {
        progress((round + 1) / ROUNDS);
        return true;
      },
    });
  },
};
