import type { TextKind } from '../../core/kind/index.ts';
import { showTask, t } from '../state/index.ts';
import { type Found, readText } from './reading.ts';

/** What the thread is asked, and what it tells. */
export interface Asked {
  readonly text: string;
  readonly name: string;
  readonly wanted?: TextKind | undefined;
}
export type Told = { readonly share: number } | { readonly found: Found };

/** From this length on, letters, reading could hold the page for longer than a frame or two. */
const LONG = 100_000;

export const isLong = (text: string): boolean => text.length > LONG;

/**
 * Reads a long text in a thread of its own, with its progress and a stop in the foot; null once stopped. A page that
 * may start no thread reads it itself.
 */
export function readLong(asked: Asked): Promise<Found | null> {
  let thread: Worker;
  try {
    thread = new Worker(new URL('./reading-thread.ts', import.meta.url), { type: 'module', name: 'reading' });
  } catch {
    return Promise.resolve(readText(asked.text, asked.name, asked.wanted));
  }
  const task = `reading ${asked.name}`;
  const label = t('files.reading', { name: asked.name });
  return new Promise<Found | null>((resolve, reject) => {
    const end = (found: Found | null) => {
      thread.terminate();
      showTask(task, null);
      resolve(found);
    };
    const show = (progress: number | null) => showTask(task, { label, progress, cancel: () => end(null) });
    thread.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      if ('share' in data) show(data.share);
      else end(data.found);
    });
    thread.addEventListener('error', event => {
      event.preventDefault();
      try {
        // Whether the thread did not start or broke off, the text is there all the same.
        end(readText(asked.text, asked.name, asked.wanted));
      } catch (error) {
        end(null);
        reject(error);
      }
    });
    show(null);
    thread.postMessage(asked);
  });
}
