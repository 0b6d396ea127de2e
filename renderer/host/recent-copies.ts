import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { RecentFile } from '../../main/host/index.ts';

const RECENT_COUNT = 8;

/** A file as last opened or saved here. A page may not look where files lie, so it keeps what they held. */
export interface RecentCopy extends RecentFile {
  readonly text: string;
  readonly at: number;
}

interface Schema extends DBSchema {
  copies: { key: string; value: RecentCopy };
}

/** The files opened or saved lately, in the browser's database: whole racks fit there. */
export interface RecentCopies {
  /** Puts a file at the head of the list; false when the browser has no room for it. */
  keep(token: string, name: string, text: string): Promise<boolean>;
  /** The latest first. */
  all(): Promise<RecentCopy[]>;
}

export function createRecentCopies(database = 'turnwright recent'): RecentCopies {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  const open = () => {
    opened ??= openDB<Schema>(database, 1, {
      upgrade: created => void created.createObjectStore('copies', { keyPath: 'token' }),
    });
    return opened;
  };
  /** Two files opened at once must not have the same time. */
  let last = 0;
  const latestFirst = (copies: readonly RecentCopy[]) => copies.toSorted((one, other) => other.at - one.at);

  return {
    async keep(token, name, text) {
      const at = Math.max(Date.now(), last + 1);
      last = at;
      try {
        const { store, done } = (await open()).transaction('copies', 'readwrite');
        const others = latestFirst(await store.getAll()).filter(copy => copy.token !== token);
        const past = others.filter((copy, place) => copy.name === name || place >= RECENT_COUNT - 1);
        await Promise.all(past.map(copy => store.delete(copy.token)));
        await store.put({ token, name, folder: '', text, at });
        await done;
        return true;
      } catch {
        return false;
      }
    },
    async all() {
      return latestFirst(await (await open()).getAll('copies').catch(() => []));
    },
  };
}
