import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { RecentFile } from '../../main/host/index.ts';

const RECENT_COUNT = 8;

/** A file opened or saved lately. A page may not look where files lie, so it keeps what they held. */
interface Listed extends RecentFile {
  readonly at: number;
}

interface Schema extends DBSchema {
  /** What is listed, apart from the texts: listing must not read megabytes. */
  files: { key: string; value: Listed };
  /** By token. */
  texts: { key: string; value: string };
}

/** The files opened or saved lately, in the browser's database: whole racks fit there. */
export interface RecentCopies {
  /** Puts a file at the head of the list; false when the browser has no room for it. */
  keep(token: string, name: string, text: string): Promise<boolean>;
  /** The latest first. */
  all(): Promise<RecentFile[]>;
  /** A listed file with what it held when it was last kept; null when it is not listed. */
  read(token: string): Promise<(RecentFile & { readonly text: string }) | null>;
}

/** What another version, or a hand, put there is none of ours. */
const isListed = (file: Partial<Listed> | undefined): file is Listed =>
  typeof file?.name === 'string' && typeof file.folder === 'string' && Number.isFinite(file.at);

export function createRecentCopies(database = 'turnwright.recent-files'): RecentCopies {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  const open = () => {
    // A database that would not open, or that the browser has closed, is asked for anew the next time.
    opened ??= openDB<Schema>(database, 1, {
      upgrade(created) {
        created.createObjectStore('files', { keyPath: 'token' });
        created.createObjectStore('texts');
      },
      terminated: () => {
        opened = null;
      },
    }).catch(error => {
      opened = null;
      throw error;
    });
    return opened;
  };
  /** Two files opened at once must not have the same time. */
  let last = 0;
  const latestFirst = (files: readonly Listed[]) =>
    files.filter(isListed).toSorted((one, other) => other.at - one.at);

  return {
    async keep(token, name, text) {
      let at = Math.max(Date.now(), last + 1);
      last = at;
      try {
        const change = (await open()).transaction(['files', 'texts'], 'readwrite');
        const files = change.objectStore('files');
        const texts = change.objectStore('texts');
        const there: readonly Listed[] = await files.getAll();
        const others = latestFirst(there).filter(file => file.token !== token);
        // A clock that was put back must not hide what came last.
        at = Math.max(at, (others[0]?.at ?? 0) + 1);
        const past = others.filter((file, place) => file.name === name || place >= RECENT_COUNT - 1);
        past.push(...there.filter(file => !isListed(file)));
        for (const file of past) await Promise.all([files.delete(file.token), texts.delete(file.token)]);
        await Promise.all([files.put({ token, name, folder: '', at }), texts.put(text, token), change.done]);
        return true;
      } catch {
        return false;
      }
    },
    async all() {
      const files = await open()
        .then(each => each.getAll('files'))
        .catch(() => []);
      return latestFirst(files).map(({ token, name, folder }) => ({ token, name, folder }));
    },
    async read(token) {
      const stores = (await open()).transaction(['files', 'texts']);
      const [file, text] = await Promise.all([
        stores.objectStore('files').get(token),
        stores.objectStore('texts').get(token),
      ]);
      return isListed(file) && typeof text === 'string' ? { ...file, text } : null;
    },
  };
}
