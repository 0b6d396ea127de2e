import { LRUCache } from 'lru-cache';
import { showTask } from '../state/index.ts';
import { HOW_RUN } from './jobs/how-run.ts';
import type { JobInput, JobName, JobOutput } from './jobs/jobs.ts';
import { queueOf } from './threads.ts';

/** Work shorter than this shows no progress. */
const MOMENT_MS = 250;

const kept = new Map<JobName, LRUCache<string, object>>();

/** Answers of a job by the text of what was asked; null where none are kept. */
function keptOf(name: JobName): LRUCache<string, object> | null {
  const max = HOW_RUN[name].kept;
  if (max === 0) return null;
  const known = kept.get(name) ?? new LRUCache<string, object>({ max });
  kept.set(name, known);
  return known;
}

/** What a job answered to the same question before; null where it is not known any more. */
export function remembered<N extends JobName>(name: N, input: JobInput<N>): JobOutput<N> | null {
  return (keptOf(name)?.get(JSON.stringify(input)) as JobOutput<N> | undefined) ?? null;
}

/**
 * Runs a job once in its thread, with progress and a stop button in the foot when it takes more than a moment.
 *
 * @throws Superseded when a newer call of the same `lane` replaced it, or the stop button; ThreadFailed when no
 *   thread could be had; else the job's own error
 */
export async function work<N extends JobName>(
  lane: string,
  name: N,
  label: string,
  input: JobInput<N>,
  onProgress?: (share: number, soFar?: unknown) => void,
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
    const output = (await queue.ask({
      lane,
      name,
      input,
      ends: HOW_RUN[name].ends,
      progress(next, soFar) {
        share = next;
        if (next !== null) onProgress?.(next, soFar);
        if (shown) show();
      },
    })) as JobOutput<N>;
    keptOf(name)?.set(JSON.stringify(input), output);
    return output;
  } finally {
    clearTimeout(timer);
    if (shown) showTask(lane, null);
  }
}
