import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { DraftChanges, DraftRecords } from '../../main/host/index.ts';

interface Schema extends DBSchema {
  /** One record of one window's draft. */
  records: { key: [window: string, key: string]; value: string };
  /** When a window last wrote, and how much of its work is in no file. */
  windows: { key: string; value: { readonly at: number; readonly unsaved: number } };
}

/** Drafts by window, in the browser's database. */
export interface DraftDatabase {
  read(window: string): Promise<DraftRecords | null>;
  /** All of it or nothing, and on the disk when it resolves. */
  write(window: string, changes: DraftChanges, unsaved: number): Promise<void>;
  /** Gives one window's draft to another that has none. */
  hand(from: string, to: string): Promise<void>;
  remove(window: string): Promise<void>;
  /** The latest first. */
  windows(): Promise<{ readonly window: string; readonly at: number; readonly unsaved: number }[]>;
}

/** Every record of a window: arrays sort by their members, and an empty array comes after every text. */
const all = (window: string) => IDBKeyRange.bound([window, ''], [window, []]);

/** @throws (all) Error of the browser when it has no room or no database */
export function createDraftDatabase(name = 'turnwright'): DraftDatabase {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  const database = () => {
    // A database that would not open is asked for anew the next time.
    opened ??= openDB<Schema>(name, 1, {
      upgrade(created) {
        created.createObjectStore('records');
        created.createObjectStore('windows');
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
  const change = async () =>
    (await database()).transaction(['records', 'windows'], 'readwrite', { durability: 'strict' });

  return {
    async read(window) {
      const stores = (await database()).transaction(['records', 'windows']);
      if ((await stores.objectStore('windows').get(window)) === undefined) return null;
      const records = stores.objectStore('records');
      const [keys, texts] = await Promise.all([records.getAllKeys(all(window)), records.getAll(all(window))]);
      return Object.fromEntries(keys.map(([, key], at) => [key, texts[at] as string]));
    },
    async write(window, changes, unsaved) {
      const stores = await change();
      const records = stores.objectStore('records');
      // Only the last is waited for: the transaction as a whole says whether all of it is down.
      const request: Promise<unknown>[] = [];
      for (const [key, text] of Object.entries(changes)) {
        request.push(text === null ? records.delete([window, key]) : records.put(text, [window, key]));
      }
      request.push(stores.objectStore('windows').put({ at: Date.now(), unsaved }, window));
      await Promise.all([...request, stores.done]);
    },
    async hand(from, to) {
      const stores = await change();
      const records = stores.objectStore('records');
      const windows = stores.objectStore('windows');
      const about = await windows.get(from);
      for (const [, key] of await records.getAllKeys(all(from))) {
        const text = await records.get([from, key]);
        if (text !== undefined) await records.put(text, [to, key]);
      }
      await records.delete(all(from));
      if (about) await windows.put(about, to);
      await windows.delete(from);
      await stores.done;
    },
    async remove(window) {
      const stores = await change();
      await stores.objectStore('records').delete(all(window));
      await stores.objectStore('windows').delete(window);
      await stores.done;
    },
    async windows() {
      const windows = (await database()).transaction('windows').store;
      const [keys, about] = await Promise.all([windows.getAllKeys(), windows.getAll()]);
      return keys.map((window, at) => ({ window, ...about[at]! })).sort((one, other) => other.at - one.at);
    },
  };
}
