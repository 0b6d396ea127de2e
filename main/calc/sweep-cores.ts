import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type Sweep, sweepRows } from './sweep-row.ts';
import type { Cell } from './table.ts';

/** Rows handed out at a time: enough to make the hand-over cheap, few enough to keep the cores level. */
const STRETCH = 16;

interface Stretch {
  readonly from: number;
  readonly rows: readonly Cell[][];
}

/**
 * Answers every row on all cores and hands them on in order, as soon as their turn has come.
 *
 * @param here answers rows on this core until the first of the others has started, so that rows come at once and
 *   a short sweep ends before that; null leaves all to the others
 */
export async function sweepOnAllCores(
  sweep: Sweep,
  count: number,
  take: (row: readonly Cell[]) => void,
  here: ((row: number) => Cell[]) | null = sweepRows(sweep),
): Promise<void> {
  const useful = here ? Math.floor(count / STRETCH) : Math.ceil(count / STRETCH);
  const workers = Array.from({ length: Math.min(availableParallelism(), useful) }, () => startWorker(sweep));
  try {
    await answerAll(workers, count, take, here);
  } finally {
    await Promise.all(workers.map(worker => worker.terminate()));
  }
}

function answerAll(
  workers: readonly Worker[],
  count: number,
  take: (row: readonly Cell[]) => void,
  here: ((row: number) => Cell[]) | null,
): Promise<void> {
  const waiting = new Map<number, Stretch>();
  let handedOut = 0;
  let taken = 0;
  let started = false;
  return new Promise((resolve, reject) => {
    const deliver = (stretch: Stretch) => {
      waiting.set(stretch.from, stretch);
      for (let due = waiting.get(taken); due; due = waiting.get(taken)) {
        waiting.delete(due.from);
        for (const row of due.rows) take(row);
        taken += due.rows.length;
      }
      if (taken === count) resolve();
    };
    for (const worker of workers) {
      worker.on('error', reject);
      worker.on('message', (message: Stretch | 'ready') => {
        started = true;
        if (message !== 'ready') deliver(message);
        if (handedOut >= count) return;
        const from = handedOut;
        handedOut = Math.min(count, from + STRETCH);
        worker.postMessage({ from, to: handedOut });
      });
    }
    const bridge = () => {
      if (!here || started || handedOut >= count) return;
      const from = handedOut++;
      try {
        deliver({ from, rows: [here(from)] });
      } catch (error) {
        return reject(error);
      }
      setImmediate(bridge);
    };
    bridge();
  });
}

function startWorker(sweep: Sweep): Worker {
  if (!import.meta.url.endsWith('.ts')) {
    return new Worker(new URL('sweep-worker.js', import.meta.url), { workerData: sweep });
  }
  // From the sources, a worker first needs the loader that reads them; it does not inherit ours.
  const resolved = createRequire(import.meta.url).resolve('tsx/esm/api');
  const loader = pathToFileURL(resolved.replace(/\.cjs$/, '.mjs'));
  const script = new URL('sweep-worker.ts', import.meta.url);
  const code = `import('${loader}').then(({ register }) => { register(); return import('${script}'); })`;
  return new Worker(code, { eval: true, workerData: sweep });
}
