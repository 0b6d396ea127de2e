import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type Sweep, sweepRows } from './sweep-row.ts';
import type { Cell } from './table.ts';

/** Rows handed out at a time: enough to make the hand-over cheap, few enough to keep the cores level. */
const STRETCH = 16;

/** Takes a row; a promise where no more should come until it resolves. */
export type Take = (row: readonly Cell[]) => void | Promise<void>;

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
  take: Take,
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
  take: Take,
  here: ((row: number) => Cell[]) | null,
): Promise<void> {
  const waiting = new Map<number, Stretch>();
  let handedOut = 0;
  let taken = 0;
  let started = false;
  /** Rows that nobody takes must not pile up: while the reader is behind, no more are handed out. */
  let behind: Promise<void> | null = null;
  const idle: Worker[] = [];
  return new Promise((resolve, reject) => {
    const deliver = (stretch: Stretch) => {
      waiting.set(stretch.from, stretch);
      for (let due = waiting.get(taken); due; due = waiting.get(taken)) {
        waiting.delete(due.from);
        for (const row of due.rows) behind = take(row) ?? behind;
        taken += due.rows.length;
      }
      if (taken === count) resolve();
      const held = behind;
      void held?.then(() => {
        if (behind !== held) return;
        behind = null;
        for (const worker of idle.splice(0)) handTo(worker);
      }, reject);
    };
    const handTo = (worker: Worker) => {
      if (handedOut >= count) return;
      if (behind) {
        idle.push(worker);
        return;
      }
      const from = handedOut;
      handedOut = Math.min(count, from + STRETCH);
      worker.postMessage({ from, to: handedOut });
    };
    for (const worker of workers) {
      worker.on('error', reject);
      worker.on('message', (message: Stretch | 'ready') => {
        started = true;
        if (message !== 'ready') deliver(message);
        handTo(worker);
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
      if (behind) void behind.then(bridge, reject);
      else setImmediate(bridge);
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
  const code = `import('${loader}').then(tsx => tsx.register() && import('${script}'))`;
  return new Worker(code, { eval: true, workerData: sweep });
}
