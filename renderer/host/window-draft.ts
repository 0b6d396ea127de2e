/**
 * The draft of one browser window. Windows of one browser share their storage, so each writes a draft of its
 * own and holds a lock while it lives. A new window goes on with the latest draft that no living window holds,
 * so what several windows were closed or crashed with comes back window by window.
 */
const DRAFT = 'turnwright.draft.';
const LOCK = 'turnwright.window.';
const OWN_ID = 'turnwright.window';
/** A page being reloaded gives its lock up a moment after the new one asks for it. */
const LOCK_PATIENCE_MS = 1500;

export interface WindowDraft {
  read(): Promise<string | null>;
  /** `unsaved` counts what is in no file, so that a draft worth coming back to is told from one that is not. */
  write(text: string | null, unsaved: number): Promise<void>;
}

interface Left {
  readonly key: string;
  readonly at: number;
  readonly unsaved: number;
}

/** @param onOthers is told how many further drafts with unsaved work wait for a window */
export function createWindowDraft(onOthers: (count: number) => void): WindowDraft {
  const own = ownKey();
  return {
    async read() {
      const key = await own;
      const [latest, ...others] = await leftBehind(key);
      if (localStorage.getItem(key) === null && latest) {
        const stored = localStorage.getItem(latest.key)!;
        // First removed, so that both never have to fit.
        localStorage.removeItem(latest.key);
        try {
          localStorage.setItem(key, stored);
        } catch (error) {
          localStorage.setItem(latest.key, stored);
          throw error;
        }
      } else if (latest) others.unshift(latest);
      for (const each of others) if (each.unsaved === 0) localStorage.removeItem(each.key);
      const waiting = others.filter(each => each.unsaved > 0).length;
      if (waiting > 0) onOthers(waiting);
      return parsed(localStorage.getItem(key))?.text ?? null;
    },
    async write(text, unsaved) {
      const key = await own;
      if (text === null) localStorage.removeItem(key);
      else localStorage.setItem(key, `${Date.now()} ${unsaved} ${text}`);
    },
  };
}

async function ownKey(): Promise<string> {
  // Without locks no window can tell whether another lives; then there is one draft, as with one window.
  if (!navigator.locks) return `${DRAFT}only`;
  let id = sessionStorage.getItem(OWN_ID) ?? crypto.randomUUID();
  // A duplicated tab comes with the id of the one it was made from.
  if (!(await hold(id))) {
    id = crypto.randomUUID();
    await hold(id);
  }
  sessionStorage.setItem(OWN_ID, id);
  return DRAFT + id;
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

/** Drafts of windows that live no more, the latest first. */
async function leftBehind(own: string): Promise<Left[]> {
  if (!navigator.locks) return [];
  const { held = [] } = await navigator.locks.query();
  const living = new Set(held.map(lock => lock.name?.slice(LOCK.length)));
  return Object.keys(localStorage)
    .filter(key => key.startsWith(DRAFT) && key !== own && !living.has(key.slice(DRAFT.length)))
    .flatMap(key => {
      const stored = parsed(localStorage.getItem(key));
      return stored ? [{ key, at: stored.at, unsaved: stored.unsaved }] : [];
    })
    .sort((one, other) => other.at - one.at);
}

function parsed(stored: string | null): { at: number; unsaved: number; text: string } | null {
  const found = /^(\d+) (\d+) /.exec(stored ?? '');
  if (!found) return null;
  return { at: Number(found[1]), unsaved: Number(found[2]), text: stored!.slice(found[0].length) };
}
