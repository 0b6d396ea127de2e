import { computed } from '@preact/signals';
import { wallStrengthOf } from '../../core/carve/index.ts';
import { inSi, siOf } from '../../core/conditions/index.ts';
import type { FieldFault } from '../../core/fault/index.ts';
import type { PlainKey, Sentence } from '../../core/language/index.ts';
import type { Track, TurnBasis } from '../../core/run/index.ts';
import { legSpanOf } from '../../core/skier/index.ts';
import { type ChosenPair, conditions, inWords, ski, t } from '../state/index.ts';
import { answer } from './answer.ts';
import type { HillAnswer } from './jobs/hill-jobs.ts';
import { groundOf, PLAN_FIELDS, type RhythmAnswer, type RunPlan } from './jobs/run-plan.ts';
import { tableOf } from './radius-tables.ts';
import { ghostPair, groundPlan, leadPair, programmePlan } from './run-question.ts';
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
  /** Asking once more may help: the calculation was stopped. */
  readonly again: boolean;
  /** An answer is being worked out; what is shown belongs to the question before, or is a first look. */
  readonly working: boolean;
  /** What is shown is a first look at the question. */
  readonly draft: boolean;
}

interface RunRequest {
  readonly pair: ChosenPair;
  readonly plan: RunPlan;
}

/** Where a pair's turn radius comes from. */
export interface TurnSource {
  readonly turn: TurnBasis | null;
  /** The model in a word or two. */
  readonly model: PlainKey;
  /** Said beside the readings: the solved groove, or the cosine rule and why. */
  readonly words: Sentence;
}

export function turnSource(pair: Pick<ChosenPair, 'pair'>, hardnessNPerMm3: number): TurnSource {
  const sidecutRadius = radiusOf(pair.pair);
  const state = tableOf(pair.pair, siOf('hardnessNPerMm3', hardnessNPerMm3)).value;
  if (state.table) {
    return {
      turn: { table: state.table },
      model: 'answers.model.bent',
      words: { key: 'answers.turnsBent' },
    };
  }
  if (sidecutRadius === null) {
    return {
      turn: null,
      model: 'answers.model.none',
      words: { key: 'answers.turnsNot' },
    };
  }
  const waits = !state.missing && !state.failure;
  const why: Sentence = state.missing
    ? { key: 'answers.whyNoStiffness' }
    : state.failure
      ? { key: 'answers.whyNotSolved', values: { why: state.failure } }
      : { key: 'answers.whySolving' };
  return {
    turn: {
      sidecutRadius,
      press: {
        contactLength: ski(pair.pair).contactLength,
        hardness: siOf('hardnessNPerMm3', hardnessNPerMm3),
      },
    },
    model: waits ? 'answers.model.cosineYet' : 'answers.model.cosine',
    words: { key: 'answers.turnsByCosine', values: { why } },
  };
}

/** The question to the worker; follows every control. */
export const runRequests = computed<readonly RunRequest[]>(() => {
  const lead = leadPair.value;
  const ghost = ghostPair.value;
  const c = conditions.value;
  const said = { ...inSi(c, PLAN_FIELDS), ...legSpanOf(c) };
  const skiers = [lead, ghost].filter(pair => pair !== null);
  return skiers.flatMap(pair => {
    const { turn } = turnSource(pair, c.hardnessNPerMm3);
    if (!turn) return [];
    const plan: RunPlan = {
      turn,
      ground: groundPlan.value,
      programme: programmePlan.value,
      ...said,
      baseBevel: pair.ski.baseBevel,
      contactLength: pair.ski.contactLength,
      wallStrength: wallStrengthOf(c),
    };
    return [{ pair, plan }];
  });
});

const isRhythm = (skiers: readonly RunRequest[]) => skiers[0]?.plan.programme.kind === 'rhythm';
const asJob = (skiers: readonly RunRequest[], draft: boolean) => ({
  skiers: skiers.map(({ pair, plan }) => ({ id: pair.id, plan })),
  draft,
});

/** A first look at every question of a drag; a rhythm is quick enough without. */
const glimpsed = answer('skiRuns', {
  label: () => t('answers.run'),
  question: () => (runRequests.value.length > 0 && !isRhythm(runRequests.value) ? runRequests.value : null),
  input: (skiers: readonly RunRequest[]) => asJob(skiers, true),
});

/** How long a control rests before its run is worked out closely. */
const AT_REST_MS = 150;

const solved = answer('skiRuns', {
  label: skiers => t(isRhythm(skiers) ? 'answers.quickestTurn' : 'answers.run'),
  question: () => (runRequests.value.length > 0 ? runRequests.value : null),
  input: (skiers: readonly RunRequest[]) => asJob(skiers, false),
  settleMs: skiers => (isRhythm(skiers) ? 0 : AT_REST_MS),
});

/** Asks for the run once more, after a stop. */
export const askAgain = solved.retry;

type RunsAndProblem = Pick<Runs, 'runs'> & { readonly problem: Sentence | FieldFault | null };
const read = new WeakMap<readonly HillAnswer[], RunsAndProblem>();

/** Runs keep their objects, whatever else is told of them: the groove on the hill stays laid. */
function runsOf(answers: readonly HillAnswer[], question: readonly RunRequest[]): RunsAndProblem {
  const known = read.get(answers) ?? answered(question, answers);
  read.set(answers, known);
  return known;
}

/** The skis down the hill, in step with the controls: the running question finishes, the latest waits. */
export const runs = computed<Runs>(() => {
  if (runRequests.value.length === 0) {
    return {
      runs: [],
      problem: t('answers.noTurn'),
      again: false,
      working: false,
      draft: false,
    };
  }
  const first = glimpsed.value;
  const { value, of, error, running, stopped } = solved.value;
  if (error) {
    return {
      runs: [],
      problem: t('answers.runFailed', { why: error }),
      again: false,
      working: running,
      draft: false,
    };
  }
  // What a first look does not find may be there: only a close one refuses.
  if (
    first.value?.every(({ ok }) => ok) &&
    first.of &&
    first.of !== of &&
    of !== runRequests.value &&
    !stopped
  ) {
    const { runs } = runsOf(first.value, first.of);
    return { runs, problem: null, again: false, working: true, draft: true };
  }
  const reported: RunsAndProblem = value && of ? runsOf(value, of) : { runs: [], problem: null };
  return {
    runs: reported.runs,
    problem: reported.problem && inWords(reported.problem),
    ...(stopped && { problem: t('answers.runStopped') }),
    again: stopped,
    working: running,
    draft: false,
  };
});

function answered(question: readonly RunRequest[], answers: readonly HillAnswer[]): RunsAndProblem {
  const first = answers[0]!;
  if (!first.ok) return { runs: [], problem: first.problem };
  const others = answers.slice(1).flatMap((answer, i): Sentence[] => {
    if (answer.ok) return [];
    return [{ key: 'run.ofPair', values: { name: question[i + 1]!.pair.name, problem: answer.problem } }];
  });
  return {
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
