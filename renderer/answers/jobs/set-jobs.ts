import { carvingSkiOf, wallStrengthOf } from '../../../core/carve/index.ts';
import { fieldsOf, inSi, type Said, USUAL } from '../../../core/conditions/index.ts';
import {
  type CourseConditions,
  type CoursePair,
  type Gate,
  gateTurns,
  type NoQuickLine,
  type QuickLine,
  quickLine,
  type Ranking,
  rankPairs,
} from '../../../core/course/index.ts';
import type { Sentence } from '../../../core/language/index.ts';
import { rankByQuickestRun, runFailureSentence, type TimedPair } from '../../../core/line/index.ts';
import { type Pair, skiOf } from '../../../core/pair/index.ts';
import { evenSlope, type TurnBasis, turnOf } from '../../../core/run/index.ts';
import { skierOf } from '../../../core/skier/index.ts';
import { DEGREE, KMH } from '../../../core/units/index.ts';

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

/** Pairs to be timed over their quickest runs, as plain data. */
export interface QuickestInput {
  readonly pairs: readonly {
    readonly id: string;
    readonly pair: Pair;
    readonly turn: TurnBasis;
    /** Rules it fails where it is known who races; it is timed and not picked. */
    readonly failedRules: readonly string[];
  }[];
  readonly gates: readonly Gate[];
  readonly discipline: 'SL' | 'GS';
  readonly said: Partial<Said>;
  readonly slopeDeg: number;
  readonly startSpeedKmh: number;
}

const TOLD = [
  'seconds',
  'secondsPlusMinus',
  'gap',
  'gapPlusMinus',
  'neededEdge',
  'leastGrip',
  'greatestLoad',
  'legWork',
] as const;

export interface QuickestAnswer {
  /** Quickest first, in SI. */
  readonly pairs: readonly (Pick<TimedPair, (typeof TOLD)[number]> & { readonly id: string })[];
  readonly untimed: readonly { readonly id: string; readonly why: Sentence }[];
  /** Id of the pair to pick; null where no gap is larger than its ±. */
  readonly pick: string | null;
  readonly because: readonly Sentence[];
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

  /** Pairs by the time of their quickest runs, each begun from the others' answers. */
  quickestRuns(input: QuickestInput, progress: (share: number) => void): QuickestAnswer {
    const { pairs, gates, said, discipline } = input;
    const turns = gateTurns(gates);
    const { hardness } = inSi({ ...USUAL, ...said }, ['hardnessNPerMm3']);
    const onSnow = pairs.map(({ pair, turn, failedRules }) => {
      const ski = skiOf(pair);
      const carving = 'table' in turn ? carvingSkiOf(ski) : null;
      const inWords = { discipline: { key: `discipline.${discipline}` }, rules: failedRules } as const;
      return {
        ski,
        surface: turnOf(turn),
        groove: carving?.ok ? { ski: carving.ski, hardness } : null,
        stiffnessUnknown: ski.bending === null,
        ...(failedRules.length > 0 && { barred: { key: 'line.failsRules', values: inWords } as const }),
      };
    });
    const ranking = rankByQuickestRun(
      onSnow,
      {
        conditions: {
          ...inSi({ ...USUAL, ...said }, [...fieldsOf('model', 'pole'), 'friction', 'airDensity']),
          skier: skierOf(said),
          wallStrength: wallStrengthOf(said),
          slope: evenSlope(input.slopeDeg * DEGREE),
        },
        poles: gates.map(({ x, y }, i) => ({ x, y, turn: turns[i]! > 0 ? 1 : -1 })),
        startSpeed: input.startSpeedKmh * KMH,
      },
      { onProgress: progress },
    );
    const idOf = (index: number) => pairs[index]!.id;
    return {
      pairs: ranking.pairs.map(pair => ({
        id: idOf(pair.index),
        ...(Object.fromEntries(TOLD.map(name => [name, pair[name]])) as Pick<
          TimedPair,
          (typeof TOLD)[number]
        >),
      })),
      untimed: ranking.untimed.map(({ index, failure }) => ({
        id: idOf(index),
        why: runFailureSentence(failure),
      })),
      pick: ranking.pick === null ? null : idOf(ranking.pick),
      because: ranking.because,
    };
  },

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
