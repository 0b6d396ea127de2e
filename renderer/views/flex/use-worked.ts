import { type Remote, wrap } from 'comlink';
import { useEffect, useRef, useState } from 'preact/hooks';
import { report } from '../../state/index.ts';
import type { Jobs } from './worker.ts';

let jobs: Remote<Jobs> | null = null;

function started(): Remote<Jobs> {
  jobs ??= wrap<Jobs>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
  return jobs;
}

/**
 * An answer from the worker, asked for again whenever `key` changes; null until the first is there.
 * One question is under way at a time and only the latest waits, so a drag never queues up work. `key` comes
 * back with the answer, so a caller can tell whether it is still the one asked for.
 */
export function useWorked<T>(
  key: string,
  ask: ((jobs: Remote<Jobs>) => Promise<T>) | null,
): { readonly key: string; readonly value: T } | null {
  const [answer, setAnswer] = useState<{ key: string; value: T } | null>(null);
  const latest = useRef({ key, ask });
  latest.current = { key, ask };
  const busy = useRef(false);
  const alive = useRef(true);

  useEffect(() => {
    alive.current = true;
    return () => {
      alive.current = false;
    };
  }, []);

  useEffect(() => {
    const run = async () => {
      busy.current = true;
      while (latest.current.ask && alive.current) {
        const asked = latest.current;
        try {
          const value = await asked.ask!(started());
          if (alive.current) setAnswer({ key: asked.key, value });
        } catch (error) {
          report((error as Error).message, 'error');
        }
        if (latest.current.key === asked.key) break;
      }
      busy.current = false;
    };
    if (ask && !busy.current) void run();
  }, [key]);
  return answer;
}
