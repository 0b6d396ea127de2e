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

/** Answers every row on all cores and hands them on in order, as soon as their turn has come. */
export async function sweepOnAllCores(
  sweep: Sweep,
  count: number,
  take: (row: readonly Cell[]) => void,
): Promise<void> {
  if (count <= STRETCH) {
    // Done before a core could have been started.
    const answer = sweepRows(sweep);
    for (let row = 0; row < count; row++) take(answer(row));
    return;
  }
  const workers = Array.from({ length: Math.min(availableParallelism(), Math.ceil(count / STRETCH)) }, () =>
    startWorker(sweep),
  );
  const waiting = new Map<number, Stretch>();
  let handedOut = 0;
  let taken = 0;
  const work = workers.map(
    worker =>
      new Promise<void>((resolve, reject) => {
        const next = () => {
          if (handedOut >= count) return resolve();
          const from = handedOut;
          handedOut = Math.min(count, from + STRETCH);
          worker.postMessage({ from, to: handedOut });
        };
        worker.on('error', reject);
        worker.on('message', (stretch: Stretch) => {
          waiting.set(stretch.from, stretch);
          for (let due = waiting.get(taken); due; due = waiting.get(taken)) {
            waiting.delete(due.from);
            for (const row of due.rows) take(row);
            taken += due.rows.length;
          }
          next();
        });
        next();
      }),
  );
  try {
    await Promise.all(work);
  } finally {
    await Promise.all(workers.map(worker => worker.terminate()));
  }
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
