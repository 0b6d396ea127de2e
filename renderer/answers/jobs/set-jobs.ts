import { carvingSkiOf, wallStrengthOf } from '../../../core/carve/index.ts';
import { fieldsOf, inSi, type Said, USUAL } from '../../../core/conditions/index.ts';
import { type Gate, gateTurns } from '../../../core/course/index.ts';
import { FieldError, type FieldFault } from '../../../core/fault/index.ts';
import type { Sentence } from '../../../core/language/index.ts';
import {
  type ChangeWorth,
  changeWorths,
  type GateReading,
  gateReadings,
  type Inputs,
  type LineRun,
  type ManyRanking,
  type PairOnSnow,
  type RankingQuestion,
  rankMany,
  runFailureSentence,
  type SkiWorth,
  type TimedPair,
} from '../../../core/line/index.ts';
import { type Pair, skiOf } from '../../../core/pair/index.ts';
import { evenSlope, readProfile, type TurnBasis, turnOf } from '../../../core/run/index.ts';
import { skierOf } from '../../../core/skier/index.ts';
import { DEGREE, KMH } from '../../../core/units/index.ts';
import type { Progress } from './jobs.ts';

/** A pair asked about on a set, as plain data. */
export interface SetPair {
  readonly id: string;
  readonly pair: Pair;
  readonly turn: TurnBasis;
  /** Rules it fails where it is known who races; it is timed and not picked. */
  readonly failedRules: readonly Sentence[];
}

/** Pairs to be timed over their quickest runs, as plain data. */
export interface QuickestInput {
  readonly pairs: readonly SetPair[];
  readonly gates: readonly Gate[];
  readonly discipline: 'SL' | 'GS';
  readonly said: Partial<Said>;
  readonly slopeDeg: number;
  /** Text of a slope profile, in place of the slope. */
  readonly profile: string | null;
  /** The cosine rule was asked for, whatever the pairs state of their stiffness. */
  readonly rigidAsked: boolean;
  /** 0 from rest. */
  readonly startSpeedKmh: number;
  /** A pace nobody goes beyond; null to ride free. */
  readonly paceKmh: number | null;
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
  'scrapeWork',
  'startSpeedWorth',
] as const;
const DRAWN = ['t', 'x', 'y', 'massX', 'massY', 'massSpeed', 'edge', 'lean', 'push', 'hold'] as const;

export type QuickestPair = Pick<TimedPair, (typeof TOLD)[number]> & {
  readonly id: string;
  readonly run: Pick<LineRun, (typeof DRAWN)[number]>;
  readonly gates: readonly GateReading[];
  readonly limits: LineRun['limits'];
  /** Seconds per SI unit of each input, and what realistic changes bring, the dearest first. */
  readonly inputs: Inputs;
  readonly skiWorths: readonly SkiWorth[];
  readonly worth: readonly ChangeWorth[];
};

export interface QuickestAnswer {
  /** Quickest first, in SI. */
  readonly pairs: readonly QuickestPair[];
  readonly untimed: readonly { readonly id: string; readonly why: Sentence }[];
  /** Pairs of a long list that were looked at by the rhythm of the gates alone, s from gate to gate. */
  readonly byRhythmAlone: readonly { readonly id: string; readonly secondsPerGate: number | null }[];
  /** Id of the pair to pick; null where no gap is larger than its ±. */
  readonly pick: string | null;
  readonly because: readonly Sentence[];
  /** What of the gates, the hill or the skier cannot be asked; null where runs were looked for. */
  readonly fault: FieldFault | null;
}

/** Times of first runs, before they were begun from each other's. */
export type FirstTimes = readonly { readonly id: string; readonly seconds: number }[];

/** Gates, hill, snow and skier of a question in SI. */
export function rankingQuestionOf(input: Omit<QuickestInput, 'pairs'>): RankingQuestion {
  const { gates, said, slopeDeg, profile, startSpeedKmh, paceKmh } = input;
  const turns = gateTurns(gates);
  return {
    conditions: {
      ...inSi({ ...USUAL, ...said }, [...fieldsOf('model', 'pole'), 'friction', 'airDensity']),
      skier: skierOf(said),
      wallStrength: wallStrengthOf(said),
      slope: profile === null ? evenSlope(slopeDeg * DEGREE) : readProfile(profile),
    },
    poles: gates.map(({ x, y }, i) => ({ x, y, turn: turns[i]! > 0 ? 1 : -1 })),
    startSpeed: (paceKmh ?? startSpeedKmh) * KMH,
    ...(paceKmh !== null && { pace: paceKmh * KMH }),
  };
}

const NOTHING = { pairs: [], untimed: [], byRhythmAlone: [], pick: null, because: [] } as const;

export const hardnessOf = (said: Partial<Said>): number =>
  inSi({ ...USUAL, ...said }, ['hardnessNPerMm3']).hardness;

/** Work of the Set view. */
export const setJobs = {
  /** Pairs by the time of their quickest runs, each begun from the others' answers; first times on the way. */
  quickestRuns(input: QuickestInput, progress: Progress): QuickestAnswer {
    const idOf = (index: number) => input.pairs[index]!.id;
    const first: { id: string; seconds: number }[] = [];
    let share = 0;
    let ranking: ManyRanking;
    try {
      ranking = rankMany(onSnow(input), rankingQuestionOf(input), {
        onProgress(next) {
          share = next;
          progress(share);
        },
        onRun({ seconds }, index) {
          first.push({ id: idOf(index), seconds });
          progress(share, [...first]);
        },
      });
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      // An error loses its fields on the way between threads.
      const { field, found, accepted, because } = error;
      return { ...NOTHING, fault: { field, found, accepted, ...(because && { because }) } };
    }
    return {
      pairs: ranking.pairs.map(pair => toldOf(pair, idOf(pair.index))),
      untimed: ranking.untimed.map(({ index, failure }) => ({
        id: idOf(index),
        why: runFailureSentence(failure),
      })),
      byRhythmAlone: ranking.byRhythmAlone.map(({ index, secondsPerGate }) => ({
        id: idOf(index),
        secondsPerGate,
      })),
      pick: ranking.pick === null ? null : idOf(ranking.pick),
      because: ranking.because,
      fault: null,
    };
  },
};

function onSnow({ pairs, said, discipline, rigidAsked }: QuickestInput): PairOnSnow[] {
  const hardness = hardnessOf(said);
  return pairs.map(({ pair, turn, failedRules }) => {
    const ski = skiOf(pair);
    const carving = 'table' in turn ? carvingSkiOf(ski) : null;
    const inWords = { discipline: { key: `discipline.${discipline}` }, rules: failedRules } as const;
    return {
      ski,
      surface: turnOf(turn),
      groove: carving?.ok ? { ski: carving.ski, hardness } : null,
      stiffnessUnknown: !rigidAsked && !carving?.ok,
      ...(failedRules.length > 0 && { barred: { key: 'line.failsRules', values: inWords } as const }),
    };
  });
}

function toldOf(pair: TimedPair, id: string): QuickestPair {
  const { run, poleNodes } = pair.run;
  const inputs = { ...pair.worth.inputs, startSpeed: pair.startSpeedWorth };
  return {
    id,
    ...(Object.fromEntries(TOLD.map(name => [name, pair[name]])) as Pick<TimedPair, (typeof TOLD)[number]>),
    run: Object.fromEntries(DRAWN.map(name => [name, run[name]])) as Pick<LineRun, (typeof DRAWN)[number]>,
    gates: gateReadings(run, poleNodes),
    limits: run.limits,
    inputs,
    skiWorths: pair.skiWorths,
    worth: changeWorths(inputs, pair.skiWorths),
  };
}
