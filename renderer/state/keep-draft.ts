import { effect } from '@preact/signals';
import { type DraftChanges, draftChanges } from './draft-records.ts';
import type { Project } from './project.ts';
import { project } from './store.ts';

/** Where the draft is kept: the host's, or any function. All of one write is kept, or nothing of it. */
export interface DraftStore {
  write(changes: DraftChanges): Promise<void>;
  /** The same as the page goes, when nothing can be waited for. */
  leave(changes: DraftChanges): void;
}

/** From an edit to its writing; edits that go on do not put it off. */
const PAUSE_MS = 300;
/** After a write that failed. */
const RETRY_MS = 2000;

export interface DraftKeeper {
  /** Writes what is not written yet; resolves when it is down. */
  flush(): Promise<void>;
  /** Stops after a last write. */
  stop(): Promise<void>;
}

/**
 * Writes what changed a moment after every change. A write that fails is tried again until it works.
 *
 * @param kept the project that the store holds already; null when it holds none or not all of it
 * @param stale keys of records in the store that are of no use any more
 * @param onTrouble is told why once when writes begin to fail, and null once they work again
 */
export function keepDraft(
  store: DraftStore,
  kept: Project | null,
  stale: readonly string[],
  onTrouble: (why: string | null) => void,
): DraftKeeper {
  let written = kept;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> | null = null;
  let failing = false;

  const schedule = (after: number) => {
    if (timer === undefined && writing === null) timer = setTimeout(() => void write(), after);
  };
  const write = (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    writing ??= writeOnce().finally(() => {
      writing = null;
      if (written !== project.peek()) schedule(failing ? RETRY_MS : PAUSE_MS);
    });
    return writing;
  };
  const writeOnce = async () => {
    const now = project.peek();
    const changes = draftChanges(written, now, written === null ? stale : []);
    try {
      if (Object.keys(changes).length > 0) await store.write(changes);
      written = now;
      if (failing) onTrouble(null);
      failing = false;
    } catch (error) {
      if (!failing) onTrouble((error as Error).message);
      failing = true;
    }
  };
  const flush = async () => {
    // What is being written may be older than the last edit.
    if (writing) await writing;
    if (written !== project.peek()) await write();
  };
  const stopWatching = effect(() => {
    if (project.value !== written) schedule(PAUSE_MS);
  });
  // A page that is left or put aside may never run its timer, nor end a write under way.
  const onLeave = () => {
    const now = project.peek();
    if (written !== now) store.leave(draftChanges(written, now, written === null ? stale : []));
  };
  const onHidden = () => void flush();
  globalThis.addEventListener?.('pagehide', onLeave);
  globalThis.document?.addEventListener?.('visibilitychange', onHidden);
  return {
    flush,
    async stop() {
      stopWatching();
      globalThis.removeEventListener?.('pagehide', onLeave);
      globalThis.document?.removeEventListener?.('visibilitychange', onHidden);
      await flush();
      clearTimeout(timer);
    },
  };
}
