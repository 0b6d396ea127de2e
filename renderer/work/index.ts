/**
 * Heavy work off the page's thread.
 *
 *   const track = useWork('linkedRun', 'Running down the hill', () => input or null);   in a component
 *   track.value → { value, error, running }     a signal; the last value stays while a newer one is made
 *
 * `useWork` asks again whenever a signal read in the input function changes; the latest wins, and progress
 * with a stop button shows in the foot when it takes more than a moment. `doWork(lane, name, label, input)`
 * asks once. Jobs are in `jobs.ts`.
 */
import { effect, type ReadonlySignal, useSignal } from '@preact/signals';
import { proxy, releaseProxy, wrap } from 'comlink';
import { useEffect, useRef } from 'preact/hooks';
import { showTask } from '../state/index.ts';
import type { JobInput, JobName, JobOutput } from './jobs.ts';
import { Queue, Superseded, type Thread } from './queue.ts';
import type { WorkServer } from './worker.ts';

export type { JobInput, JobName, JobOutput, LinkedRunInput } from './jobs.ts';
export { Superseded } from './queue.ts';

/** Work shorter than this shows no progress. */
const MOMENT_MS = 250;

const queue = new Queue((): Thread => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'work' });
  const server = wrap<WorkServer>(worker);
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', event =>
      reject(new Error(event.message || 'The calculation failed to start.')),
    );
  });
  return {
    run: (name, input, progress) =>
      Promise.race([server.run(name as JobName, input, proxy(progress)) as Promise<unknown>, failed]),
    end() {
      server[releaseProxy]();
      worker.terminate();
    },
  };
});

/**
 * Runs a job in the worker. A newer call with the same `lane` replaces this one, which then rejects with
 * `Superseded`; so does the stop button. Other failures reject with the job's own error.
 */
export async function doWork<N extends JobName>(
  lane: string,
  name: N,
  label: string,
  input: JobInput<N>,
): Promise<JobOutput<N>> {
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
      progress(next) {
        share = next;
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
    let asked = 0;
    const stop = effect(() => {
      const question = latest.current();
      asked += 1;
      const mine = asked;
      if (question === null) {
        queue.stop(lane);
        state.value = { value: null, error: null, running: false };
        return;
      }
      state.value = { ...state.peek(), running: true };
      doWork(lane, name, label, question).then(
        value => {
          if (mine === asked) state.value = { value, error: null, running: false };
        },
        (error: Error) => {
          if (mine !== asked) return;
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
      queue.stop(lane);
    };
  }, [name, label, lane]);
  return state;
}
