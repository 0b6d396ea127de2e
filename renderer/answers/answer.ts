import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { HOW_RUN } from './jobs/how-run.ts';
import type { JobInput, JobName, JobOutput } from './jobs/jobs.ts';
import { Superseded, ThreadFailed } from './queue.ts';
import { queueOf } from './threads.ts';
import { remembered, work } from './work.ts';

/** How far the answer to a question has come. */
export interface Answer<T, Q> {
  /** The last answer; while `running` it belongs to the question before. */
  readonly value: T | null;
  /** The question `value` answers. */
  readonly of: Q | null;
  /** Why there is no answer. */
  readonly error: string | null;
  /** A newer answer has been under way for a moment, or the first one is. */
  readonly running: boolean;
  /** 0–1 while it can be told. Only who reads it is told of every step. */
  readonly progress: number | null;
  /** What the job under way knows already, where it tells. Only who reads it is told. */
  readonly soFar: unknown;
  /** The person stopped it; `value` stands. */
  readonly stopped: boolean;
}

/** An answer that follows its question while anything reads it. */
export interface Asked<T, Q> extends ReadonlySignal<Answer<T, Q>> {
  /** Asks once more after a stop or a failure. */
  retry(): void;
}

/** An answer that comes sooner is not waited for: nothing is redrawn to say that it is on its way. */
const MOMENT_MS = 200;

const failures = signal<ReadonlyMap<() => void, string>>(new Map());

function noteFailure(retry: () => void, why: string | null): void {
  if (why === null && !failures.peek().has(retry)) return;
  const next = new Map(failures.peek());
  if (why === null) next.delete(retry);
  else next.set(retry, why);
  failures.value = next;
}

/** Why an answer that is read just now has no thread to be worked out in; null when all have. */
export const threadFailure: ReadonlySignal<string | null> = computed(
  () => [...failures.value.values()][0] ?? null,
);

/** Asks everything once more that found no thread. */
export function retryAll(): void {
  for (const retry of failures.peek().keys()) retry();
}

let lanes = 0;

/**
 * A job's answer to a question, worked out off the page's thread while the signal is read.
 *
 *   const modes = answer('modes', { label: () => t('answers.modes'), question: () => input or null });
 *   modes.value → { value, of, error, running, progress, stopped }
 *
 * `question` reads signals, and is asked again whenever one of them changes: the latest wins. Null means that there
 * is nothing to ask, and clears the answer. A question that is no job's input is made one by `input`.
 *
 * @param settleMs how long the question has to stand still before it is asked
 */
export function answer<N extends JobName, Q extends object = JobInput<N>>(
  name: N,
  about: {
    readonly label: string | ((question: Q) => string);
    question(): Q | null;
    input?(question: Q): JobInput<N>;
    readonly settleMs?: number | ((question: Q) => number);
  },
): Asked<JobOutput<N>, Q> {
  type Now = Answer<JobOutput<N>, Q>;
  const { label, question, settleMs = 0 } = about;
  const inputOf = about.input ?? ((requested: Q) => requested as unknown as JobInput<N>);
  lanes += 1;
  const lane = `${name} ${lanes}`;
  const share = signal<number | null>(null);
  const soFar = signal<unknown>(null);
  const again = signal(0);
  const reported = (now: Partial<Omit<Now, 'progress' | 'soFar'>>): Now => ({
    value: null,
    of: null,
    error: null,
    running: false,
    stopped: false,
    ...now,
    get progress() {
      return share.value;
    },
    get soFar() {
      return soFar.value;
    },
  });
  const tell = (now: Partial<Omit<Now, 'progress' | 'soFar'>>) => {
    state.value = reported(now);
  };

  let stopFollowing: (() => void) | undefined;
  /** The question asked last, as long as it needs no asking again. */
  let last: Q | null = null;
  let requested = 0;
  let shown = 0;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let slow: ReturnType<typeof setTimeout> | undefined;

  const retry = () => {
    last = null;
    again.value += 1;
  };

  const state = signal<Now>(reported({}), {
    watched() {
      // A reader is being drawn at this moment, and must not be told of a change while it is.
      let ended = false;
      let end = () => {};
      queueMicrotask(() => {
        if (!ended) end = effect(ask);
      });
      stopFollowing = () => {
        ended = true;
        end();
      };
    },
    unwatched() {
      stopFollowing?.();
      stopFollowing = undefined;
      leave();
      noteFailure(retry, null);
    },
  });

  /** Nobody waits any more: what has not begun is dropped, and what runs where nothing keeps its answer. */
  function leave() {
    clearTimeout(slow);
    slow = undefined;
    let dropped = settling !== undefined;
    clearTimeout(settling);
    settling = undefined;
    if (requested !== shown) {
      const queue = queueOf(name);
      const { ends } = HOW_RUN[name];
      // Before the queue tells of it: that it was dropped is nobody's stop button.
      const before = shown;
      shown = requested;
      if (ends) queue.stop(lane);
      if (ends || queue.forget(lane)) dropped = true;
      else shown = before;
    }
    if (dropped) last = null;
  }

  function ask() {
    void again.value;
    const now = question();
    if (now === null) {
      leave();
      last = null;
      requested += 1;
      shown = requested;
      noteFailure(retry, null);
      if (state.peek().value !== null || state.peek().error !== null || state.peek().running) tell({});
      return;
    }
    if (now === last) return;
    last = now;
    const input = inputOf(now);
    const known = remembered(name, input);
    if (known !== null) {
      clearTimeout(settling);
      settling = undefined;
      requested += 1;
      answered(requested, now, known);
      return;
    }
    wait();
    clearTimeout(settling);
    settling = undefined;
    const rest = typeof settleMs === 'number' ? settleMs : settleMs(now);
    if (rest > 0) settling = setTimeout(() => begin(now, input), rest);
    else begin(now, input);
  }

  function wait() {
    const { value, of, running } = state.peek();
    if (value === null && !running) tell({ running: true });
    if (value !== null) slow ??= setTimeout(() => tell({ value, of, running: true }), MOMENT_MS);
  }

  function begin(now: Q, input: JobInput<N>) {
    settling = undefined;
    requested += 1;
    const mine = requested;
    share.value = null;
    soFar.value = null;
    work(lane, name, typeof label === 'string' ? label : label(now), input, (next, known) => {
      share.value = next;
      if (known !== undefined) soFar.value = known;
    }).then(
      value => answered(mine, now, value),
      (error: Error) => failed(mine, error),
    );
  }

  function answered(mine: number, now: Q, value: JobOutput<N>) {
    // Answers on the way of a drag are shown as they come.
    if (mine <= shown) return;
    shown = mine;
    clearTimeout(slow);
    slow = undefined;
    share.value = null;
    soFar.value = null;
    noteFailure(retry, null);
    tell({ value, of: now });
    if (mine !== requested || settling !== undefined) wait();
  }

  function failed(mine: number, error: Error) {
    if (mine !== requested || mine <= shown) return;
    shown = mine;
    clearTimeout(slow);
    slow = undefined;
    share.value = null;
    soFar.value = null;
    last = null;
    if (error instanceof Superseded) {
      const { value, of } = state.peek();
      tell({ value, of, stopped: true });
      return;
    }
    if (error instanceof ThreadFailed && stopFollowing) noteFailure(retry, error.message);
    tell({ error: error.message });
  }

  return Object.assign(state, { retry });
}
