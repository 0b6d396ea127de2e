import { parentPort, workerData } from 'node:worker_threads';
import { type Sweep, sweepRows } from './sweep-row.ts';

/** One core's share of a sweep: answers the stretches of rows it is handed. */
const answer = sweepRows(workerData as Sweep);

parentPort?.postMessage('ready');
parentPort?.on('message', ({ from, to }: { from: number; to: number }) => {
  const rows = Array.from({ length: to - from }, (_, i) => answer(from + i));
  parentPort?.postMessage({ from, rows });
});
