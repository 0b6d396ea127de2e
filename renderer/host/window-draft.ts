import type { DraftChanges, DraftRecords } from '../../main/host/index.ts';
import { createDraftDatabase } from './draft-database.ts';

/**
 * The draft of one browser window. Windows of one browser share their storage, so each writes a draft of its
 * own and holds a lock while it lives. A new window goes on with the latest draft that no living window holds,
 * so what several windows were closed or crashed with comes back window by window.
 */
const LOCK = 'turnwright.window.';
const OWN_ID = 'turnwright.window';
/** What a window could not wait to see in the database when it went; it belongs on top of what is there. */
const TAIL = 'turnwright.tail.';
/** Where the first versions kept the whole draft as one text. */
const EARLIER = 'turnwright.draft.';
/** A page being reloaded gives its lock up a moment after the new one asks for it. */
const LOCK_PATIENCE_MS = 1500;

export interface WindowDraft {
  read(): Promise<DraftRecords | null>;
  /** `unsaved` counts what is in no file, so that a draft worth coming back to is told from one that is not. */
  write(changes: DraftChanges, unsaved: number): Promise<void>;
  /** The same at once, as the window goes: a database does not end its work for a page that is gone. */
  leave(changes: DraftChanges, unsaved: number): void;
}

/** @param onOthers is told how many further drafts with unsaved work wait for a window */
export function createWindowDraft(onOthers: (count: number) => void): WindowDraft {
  const database = createDraftDatabase();
  /** Null until it is known. */
  let ownId: string | null = null;
  const own = findOwnId().then(id => {
    ownId = id;
    return id;
  });
  return {
    async read() {
      const id = await own;
      await takeEarlier();
      await takeTails(id);
      const left = await leftBehind(id);
      const mine = await database.read(id);
      if (mine === null && left.length > 0) await database.hand(left.shift()!.window, id);
      for (const each of left) if (each.unsaved === 0) await database.remove(each.window);
      const waiting = left.filter(each => each.unsaved > 0).length;
      if (waiting > 0) onOthers(waiting);
      return mine ?? database.read(id);
    },
    async write(changes, unsaved) {
      const id = await own;
      await database.write(id, changes, unsaved);
      // A page that came back from being left.
      localStorage.removeItem(TAIL + id);
    },
    leave(changes, unsaved) {
      if (ownId === null) return;
      try {
        localStorage.setItem(TAIL + ownId, JSON.stringify({ changes, unsaved }));
      } catch {
        // Too much to keep at once, a rack just opened: the database may still end what it was asked for.
        void database.write(ownId, changes, unsaved);
      }
    },
  };

  /** Puts what windows that live no more left behind where it belongs. */
  async function takeTails(id: string): Promise<void> {
    const living = await livingWindows();
    for (const key of Object.keys(localStorage).filter(each => each.startsWith(TAIL))) {
      const window = key.slice(TAIL.length);
      if (window !== id && living.has(window)) continue;
      const { changes, unsaved } = JSON.parse(localStorage.getItem(key)!) as {
        changes: DraftChanges;
        unsaved: number;
      };
      await database.write(window, changes, unsaved);
      localStorage.removeItem(key);
    }
  }

  async function livingWindows(): Promise<ReadonlySet<string | undefined>> {
    const { held = [] } = (await navigator.locks?.query()) ?? {};
    return new Set(held.map(lock => lock.name?.slice(LOCK.length)));
  }

  /** Drafts of windows that live no more, the latest first. */
  async function leftBehind(id: string) {
    if (!navigator.locks) return [];
    const living = await livingWindows();
    return (await database.windows()).filter(each => each.window !== id && !living.has(each.window));
  }

  async function takeEarlier(): Promise<void> {
    for (const key of Object.keys(localStorage).filter(each => each.startsWith(EARLIER))) {
      const found = /^\d+ (\d+) /.exec(localStorage.getItem(key) ?? '');
      if (found) {
        const whole = localStorage.getItem(key)!.slice(found[0].length);
        await database.write(key.slice(EARLIER.length), { whole }, Number(found[1]));
      }
      localStorage.removeItem(key);
    }
  }
}

async function findOwnId(): Promise<string> {
  // Without locks no window can tell whether another lives; then there is one draft, as with one window.
  if (!navigator.locks) return 'only';
  let id = sessionStorage.getItem(OWN_ID) ?? crypto.randomUUID();
  // A duplicated tab comes with the id of the one it was made from.
  if (!(await hold(id))) {
    id = crypto.randomUUID();
    await hold(id);
  }
  sessionStorage.setItem(OWN_ID, id);
  return id;
}

function hold(id: string): Promise<boolean> {
  return new Promise(resolve => {
    const held = () => {
      resolve(true);
      // Never settles: the browser gives the lock up when the window ends, however it ends.
      return new Promise<void>(() => {});
    };
    navigator.locks
      .request(LOCK + id, { signal: AbortSignal.timeout(LOCK_PATIENCE_MS) }, held)
      .catch(() => resolve(false));
  });
}
