/**
 * Heavy work off the page's thread.
 *
 *   const track = useWork('rankChosen', 'Ranking', () => input or null);   in a component
 *   track.value → { value, error, running }     a signal; the last value stays while a newer one is made
 *
 * `useWork` asks again whenever a signal read in the input function changes; the latest wins, and progress
 * with a stop button shows in the foot when it takes more than a moment. `doWork(lane, name, label, input)`
 * asks once. Jobs are in `jobs.ts`; the brief ones have a thread of their own and answer all along a drag.
 * Radius tables are kept: ask `tableOf` in `radius-tables.ts` for one.
 */
import { effect, type ReadonlySignal, useSignal } from '@preact/signals';
import { proxy, releaseProxy, wrap } from 'comlink';
import { useEffect, useRef } from 'preact/hooks';
import { showTask } from '../state/index.ts';
import { BRIEF_JOBS, HILL_JOBS } from './jobs/brief-jobs.ts';
import type { JobInput, JobName, JobOutput } from './jobs/jobs.ts';
import type { WorkServer } from './jobs/worker.ts';
import { Queue, Superseded, type Thread, ThreadFailed } from './queue.ts';

export type { Identified, LargeBendAnswer, Modes, TableCurve } from './jobs/flex-jobs.ts';
export type { JobName } from './jobs/jobs.ts';
export type { RankAnswer, RankInput, SetPair } from './jobs/set-jobs.ts';
export { Superseded } from './queue.ts';

/** Work shorter than this shows no progress. */
const MOMENT_MS = 250;

const startThread = (): Thread => {
  const worker = new Worker(new URL('./jobs/worker.ts', import.meta.url), { type: 'module', name: 'work' });
  const server = wrap<WorkServer>(worker);
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', event =>
      reject(new ThreadFailed(event.message || 'The calculation failed to start.')),
    );
  });
  // Nobody may be waiting when a thread breaks off; the next request hears of it.
  failed.catch(() => {});
  return {
    run: (name, input, progress) =>
      Promise.race([server.run(name as JobName, input, proxy(progress)) as Promise<unknown>, failed]),
    end() {
      server[releaseProxy]();
      worker.terminate();
    },
  };
};

/** Brief work never waits behind long work. */
const long = new Queue(startThread);
const brief = new Queue(startThread);
const hill = new Queue(startThread);
const queueOf = (name: JobName) => (HILL_JOBS.has(name) ? hill : BRIEF_JOBS.has(name) ? brief : long);

/** Drops a job nobody wants any more if it has not begun; whether it did. */
export const forgetWork = (lane: string, name: JobName): boolean => queueOf(name).forget(lane);

/**
 * Runs a job in the worker. A newer call with the same `lane` replaces this one, which then rejects with
 * `Superseded`; so does the stop button. Other failures reject with the job's own error.
 */
export async function doWork<N extends JobName>(
  lane: string,
  name: N,
  label: string,
  input: JobInput<N>,
  onProgress?: (share: number) => void,
): Promise<JobOutput<N>> {
  const queue = queueOf(name);
  let share: number | null = null;
  let shown = false;
  const show = () => {
    shown = true;
    showTask(lane, { label, progress: share, cancel: () => queue.stop(lane) });
  };
  const timer = setTimeout(show, MOMENT_MS);
  try {
    return (await queue.ask({
      lane,
      name,
      input,
      brief: BRIEF_JOBS.has(name),
      progress(next) {
        share = next;
        if (next !== null) onProgress?.(next);
        if (shown) show();
      },
    })) as JobOutput<N>;
  } finally {
    clearTimeout(timer);
    if (shown) showTask(lane, null);
  }
}

export interface WorkState<T> {
  /** The last answer; while `running` it belongs to the inputs before. */
  readonly value: T | null;
  readonly error: string | null;
  readonly running: boolean;
}

/**
 * A job's answer that follows its inputs while the component is on screen. `input` reads signals; null
 * means there is nothing to ask and clears the answer.
 */
export function useWork<N extends JobName>(
  name: N,
  label: string,
  input: () => JobInput<N> | null,
  lane: string = name,
): ReadonlySignal<WorkState<JobOutput<N>>> {
  const state = useSignal<WorkState<JobOutput<N>>>({ value: null, error: null, running: false });
  const latest = useRef(input);
  latest.current = input;
  useEffect(() => {
    const queue = queueOf(name);
    let asked = 0;
    let shown = 0;
    const leave = () => {
      shown = asked;
      if (BRIEF_JOBS.has(name)) queue.forget(lane);
      else queue.stop(lane);
    };
    const stop = effect(() => {
      const question = latest.current();
      asked += 1;
      const mine = asked;
      if (question === null) {
        leave();
        state.value = { value: null, error: null, running: false };
        return;
      }
      state.value = { ...state.peek(), running: true };
      doWork(lane, name, label, question).then(
        value => {
          // Answers on the way of a drag are shown as they come.
          if (mine <= shown) return;
          shown = mine;
          state.value = { value, error: null, running: mine !== asked };
        },
        (error: Error) => {
          if (mine !== asked || mine <= shown) return;
          // A stop by the person leaves the last answer standing.
          const stopped = error instanceof Superseded;
          state.value = {
            value: stopped ? state.peek().value : null,
            error: stopped ? null : error.message,
            running: false,
          };
        },
      );
    });
    return () => {
      asked += 1;
      stop();
      leave();
    };
  }, [name, label, lane]);
  return state;
}
