import { proxy, releaseProxy, wrap } from 'comlink';
import { t } from '../state/index.ts';
import { HOW_RUN } from './jobs/how-run.ts';
import type { JobName } from './jobs/jobs.ts';
import type { WorkServer } from './jobs/worker.ts';
import { Queue, type Thread, ThreadFailed } from './queue.ts';

const whyFailed = () => t('answers.failedToStart');

/** @throws ThreadFailed where the page may start none */
function startThread(): Thread {
  let worker: Worker;
  try {
    worker = new Worker(new URL('./jobs/worker.ts', import.meta.url), { type: 'module', name: 'work' });
  } catch {
    throw new ThreadFailed(whyFailed());
  }
  const server = wrap<WorkServer>(worker);
  let broken = false;
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', event => {
      broken = true;
      reject(new ThreadFailed(event.message || whyFailed()));
    });
  });
  // Nobody may be waiting when a thread breaks off.
  failed.catch(() => {});
  return {
    get broken() {
      return broken;
    },
    run: (name, input, progress) =>
      Promise.race([server.run(name as JobName, input, proxy(progress)) as Promise<unknown>, failed]),
    end() {
      server[releaseProxy]();
      worker.terminate();
    },
  };
}

const queues = {
  long: new Queue(startThread),
  brief: new Queue(startThread),
  hill: new Queue(startThread),
} as const;

/** The queue a job waits its turn in. */
export const queueOf = (name: JobName): Queue => queues[HOW_RUN[name].thread];
