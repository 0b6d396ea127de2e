import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { type Remote, wrap } from 'comlink';
import type { Pair } from '../../../core/pair/index.ts';
import type { Track, TurnBasis } from '../../../core/run/index.ts';
import { type TableState, tableOf } from '../../jobs/radius-tables.ts';
import { radiusOf } from '../../rack/radius.ts';
import { type ChosenPair, conditions, report } from '../../state/index.ts';
import { groundOf, type RunAnswer, type RunPlan } from './run-plan.ts';
import { ghostPair, groundPlan, leadPair, programmePlan } from './settings.ts';
import type { RunServer } from './worker.ts';

/** One pair down the hill, with what it was asked. */
export interface PairRun {
  readonly pair: ChosenPair;
  readonly plan: RunPlan;
  readonly track: Track;
}

export interface Runs {
  /** Lead first, then the ghost; empty until the first answer. */
  readonly runs: readonly PairRun[];
  /** Why the lead has no run. */
  readonly problem: string | null;
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
    return { turn: { table: state.table }, model: 'bent ski', words: 'turns on its solved groove' };
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
    turn: { sidecutRadius },
    model: waits ? 'cosine rule until bent' : 'cosine rule',
    words: `turns by the cosine rule (${why})`,
  };
}

/** The question to the worker; follows every control. */
export const asked = computed<readonly Asked[]>(() => {
  const lead = leadPair.value;
  const ghost = ghostPair.value;
  const c = conditions.value;
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
    };
    return [{ pair, plan }];
  });
});

export const runs = signal<Runs>({ runs: [], problem: null });

let server: Remote<RunServer> | null = null;

function started(): Remote<RunServer> {
  server ??= wrap<RunServer>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
  return server;
}

/** Keeps `runs` in step with the controls: one question under way, the latest waits. Returns a stop. */
export function followRuns(): () => void {
  let busy = false;
  let alive = true;
  let done: readonly Asked[] | null = null;
  const work = async () => {
    busy = true;
    while (alive && done !== asked.peek()) {
      const question = asked.peek();
      done = question;
      try {
        const answers = question.length > 0 ? await started().runs(question.map(each => each.plan)) : [];
        if (alive) runs.value = answered(question, answers);
      } catch (error) {
        report((error as Error).message, 'error');
      }
    }
    busy = false;
  };
  const stop = effect(() => {
    void asked.value;
    if (!busy) void work();
  });
  return () => {
    alive = false;
    stop();
  };
}

function answered(question: readonly Asked[], answers: readonly RunAnswer[]): Runs {
  const first = answers[0];
  if (!first) {
    return { runs: [], problem: 'This pair has no sidecut radius, so it carves no turn; check its widths.' };
  }
  if (!first.ok) return { runs: [], problem: first.problem };
  return {
    runs: question.flatMap((each, i) => {
      const answer = answers[i];
      return answer?.ok ? [{ ...each, track: answer.track }] : [];
    }),
    problem: null,
  };
}

/** The active pair's run, where there is one. */
export const leadRun = computed<PairRun | null>(() => runs.value.runs[0] ?? null);

/** The ground the lead's run was made on. */
export const ground = computed(() => {
  const plan = leadRun.value?.plan.ground;
  return plan ? groundOf(plan) : null;
});

export const duration = computed(() =>
  runs.value.runs.reduce((most, { track }) => Math.max(most, track.t[track.t.length - 1]!), 0),
);
