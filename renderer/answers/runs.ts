import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { usualWallStrength } from '../../core/carve/index.ts';
import type { Pair } from '../../core/pair/index.ts';
import type { Track, TurnBasis } from '../../core/run/index.ts';
import { legOfHeight } from '../../core/skier/index.ts';
import { type ChosenPair, conditions, ski } from '../state/index.ts';
import type { HillAnswer } from './jobs/hill-jobs.ts';
import { groundOf, type RhythmAnswer, type RunPlan } from './jobs/run-plan.ts';
import { type TableState, tableOf } from './radius-tables.ts';
import { ghostPair, groundPlan, leadPair, programmePlan } from './run-question.ts';
import { doWork, Superseded } from './runner.ts';
import { radiusOf } from './sidecut.ts';

/** One pair down the hill, with what it was asked. */
export interface PairRun {
  readonly pair: ChosenPair;
  readonly plan: RunPlan;
  readonly track: Track;
  /** What the quickest turn was, where a rhythm was asked for. */
  readonly rhythm: RhythmAnswer | null;
}

export interface Runs {
  /** Lead first, then the ghost; empty until the first answer. */
  readonly runs: readonly PairRun[];
  /** Why the lead has no run, or why there was no answer. */
  readonly problem: string | null;
  /** Asking once more may help: the calculation was stopped or broke off. */
  readonly again: boolean;
  /** An answer is being worked out; what is shown belongs to the question before, or is a draft. */
  readonly working: boolean;
  /** What is shown is a first look at the question. */
  readonly draft: boolean;
}

interface Asked {
  readonly pair: ChosenPair;
  readonly plan: RunPlan;
}

/** Where a pair's turn radius comes from. */
export interface TurnSource {
  readonly turn: TurnBasis | null;
  /** The model in a word or two. */
  readonly model: string;
  /** Said beside the readings: the solved groove, or the cosine rule and why. */
  readonly words: string;
}

/** The table's state without its progress: who turns on it need not turn anew at every per cent. */
const settled = new Map<ReadonlySignal<TableState>, ReadonlySignal<TableState>>();
const SETTLED_KEPT = 48;

function settledTable(pair: Pair, hardness: number): TableState {
  const state = tableOf(pair, hardness);
  let calm = settled.get(state);
  if (!calm) {
    let last: TableState | null = null;
    calm = computed(() => {
      const next = state.value;
      const same =
        last?.table === next.table && last?.failure === next.failure && last?.missing === next.missing;
      if (!same) last = next;
      return last!;
    });
    settled.set(state, calm);
    if (settled.size > SETTLED_KEPT) settled.delete(settled.keys().next().value!);
  }
  return calm.value;
}

export function turnSource(pair: Pick<ChosenPair, 'pair'>, hardnessNPerMm3: number): TurnSource {
  const sidecutRadius = radiusOf(pair.pair);
  const state = settledTable(pair.pair, hardnessNPerMm3 * 1e9);
  if (state.table) {
    return {
      turn: { table: state.table },
      model: 'bent ski',
      words: 'is computed with the ski bent into this snow',
    };
  }
  if (sidecutRadius === null) {
    return {
      turn: null,
      model: 'no turn',
      words: 'has no sidecut radius, so it carves no turn; check its three widths',
    };
  }
  const waits = !state.missing && !state.failure;
  const why = state.missing
    ? 'it states no bending stiffness'
    : state.failure
      ? `its groove was not solved: ${state.failure}`
      : 'while its groove is being solved';
  return {
    turn: {
      sidecutRadius,
      press: { contactLength: ski(pair.pair).contactLength, hardness: hardnessNPerMm3 * 1e9 },
    },
    model: waits ? 'cosine rule until bent' : 'cosine rule',
    words: `turns by the cosine rule (${why})`,
  };
}

/** The question to the worker; follows every control. */
const asked = computed<readonly Asked[]>(() => {
  const lead = leadPair.value;
  const ghost = ghostPair.value;
  const c = conditions.value;
  const leg = legOfHeight(c.heightM);
  const skiers = [lead, ghost].filter(pair => pair !== null);
  return skiers.flatMap(pair => {
    const { turn } = turnSource(pair, c.hardnessNPerMm3);
    if (!turn) return [];
    const plan: RunPlan = {
      turn,
      ground: groundPlan.value,
      programme: programmePlan.value,
      mass: c.massKg,
      friction: c.friction,
      dragArea: c.dragAreaM2,
      airDensity: c.airDensity,
      startSpeed: c.speedKmh / 3.6,
      baseBevel: pair.ski.baseBevel,
      contactLength: pair.ski.contactLength,
      wallStrength: usualWallStrength(c.hardnessNPerMm3 * 1e9),
      legMin: leg.shortest,
      legMax: leg.longest,
    };
    return [{ pair, plan }];
  });
});

const NOTHING: Runs = { runs: [], problem: null, again: false, working: false, draft: false };
export const runs = signal<Runs>(NOTHING);

/** Counts the times a person has asked once more. */
const askedAgain = signal(0);
export const askAgain = (): void => {
  askedAgain.value += 1;
};

const LANE = 'down the hill';

/** Keeps `runs` in step with the controls: the running question finishes, the latest waits. Returns a stop. */
export function followRuns(): () => void {
  let latest = 0;
  let shown = 0;
  const stop = effect(() => {
    void askedAgain.value;
    const question = asked.value;
    latest += 1;
    const mine = latest;
    if (question.length === 0) {
      shown = mine;
      runs.value = {
        ...NOTHING,
        problem: 'This pair has no sidecut radius, so it carves no turn; check its widths.',
      };
      return;
    }
    runs.value = { ...runs.peek(), working: true };
    const skiers = question.map(({ pair, plan }) => ({ id: pair.id, plan }));
    const rhythmic = question[0]!.plan.programme.kind === 'rhythm';
    const words = rhythmic ? 'Finding the quickest turn' : 'Solving the run';
    const ask = (draft: boolean) => doWork(LANE, 'skiRuns', words, { skiers, draft });
    const show = (answers: readonly HillAnswer[], draft: boolean) => {
      if (mine < shown) return;
      shown = mine;
      runs.value = { ...answered(question, answers), draft, working: draft || mine !== latest };
    };
    const solve = async () => {
      if (!rhythmic) {
        const first = await ask(true);
        // What a first look does not find may be there: only a close one refuses.
        if (first.every(({ ok }) => ok)) show(first, true);
        if (mine !== latest) return;
      }
      show(await ask(false), false);
    };
    solve().catch((error: Error) => {
      if (mine !== latest) return;
      // Stopped by the person: what was there stays, and says that it is from before.
      const stopped = error instanceof Superseded;
      runs.value = {
        ...NOTHING,
        runs: stopped ? runs.peek().runs : [],
        problem: !stopped
          ? `The run could not be worked out: ${error.message}`
          : shown === mine
            ? 'Stopped. What is shown is a first look.'
            : 'Stopped. What is shown belongs to the inputs before.',
        again: true,
      };
    });
  });
  return () => {
    latest += 1;
    shown = latest;
    stop();
  };
}

function answered(question: readonly Asked[], answers: readonly HillAnswer[]): Runs {
  const first = answers[0]!;
  if (!first.ok) return { ...NOTHING, problem: first.problem };
  const others = answers
    .slice(1)
    .flatMap((answer, i) => (answer.ok ? [] : [`${question[i + 1]!.pair.name}: ${answer.problem}`]));
  return {
    ...NOTHING,
    runs: question.flatMap((each, i) => {
      const answer = answers[i]!;
      return answer.ok ? [{ ...each, track: answer.track, rhythm: answer.rhythm }] : [];
    }),
    problem: others[0] ?? null,
  };
}

/** The active pair's run, where there is one. */
export const leadRun = computed<PairRun | null>(() => runs.value.runs[0] ?? null);

/** The lead's quickest turn, where a rhythm was asked for. */
export const leadRhythm = computed<RhythmAnswer | null>(() => leadRun.value?.rhythm ?? null);

/** The ground the lead's run was made on. */
export const ground = computed(() => {
  const plan = leadRun.value?.plan.ground;
  return plan ? groundOf(plan) : null;
});

export const duration = computed(() =>
  runs.value.runs.reduce((most, { track }) => Math.max(most, track.t[track.t.length - 1]!), 0),
);
