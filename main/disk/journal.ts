import { mkdir, open, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { atomicWrite } from './atomic-write.ts';

/** Text by key. */
export type Records = Readonly<Record<string, string>>;

export interface Journal {
  /** Everything there is; null before the first write. */
  read(): Promise<Records | null>;
  /** Adds one line for all these changes and flushes it to the disk; null takes a record away. */
  write(changes: Readonly<Record<string, string | null>>): Promise<void>;
}

/** A journal is written anew as one line once it is this much longer than what it holds, bytes. */
const SLACK = 4_000_000;

/**
 * Records in a file that only grows: each write is one line of JSON, so a write costs what changed, and one
 * that was cut short is a last line that does not parse, which counts as not written. Calls follow each other.
 *
 * @throws (all) Error of the system when the disk refuses; a failed write is tried again with the next
 */
export function openJournal(path: string): Journal {
  let held: Map<string, string> | null = null;
  let length = 0;
  /** The end of the file is a line cut short, or may be: nothing may be added behind it. */
  let torn = false;
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const mine = last.then(work);
    last = mine.catch(() => {});
    return mine;
  };

  async function load(): Promise<Map<string, string> | null> {
    if (held) return held;
    const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw error;
    });
    if (text === null) return null;
    held = new Map();
    length = Buffer.byteLength(text);
    for (const line of text.split('\n')) {
      if (line === '') continue;
      const changes = lineOf(line);
      if (changes === null) torn = true;
      else apply(held, changes);
    }
    torn ||= !text.endsWith('\n');
    return held;
  }

  async function write(changes: Readonly<Record<string, string | null>>): Promise<void> {
    const records = new Map((await load()) ?? []);
    apply(records, changes);
    const line = `${JSON.stringify(changes)}\n`;
    const size = sizeOf(records);
    if (held === null || torn || length + line.length > 2 * size + SLACK) {
      await mkdir(dirname(path), { recursive: true });
      const whole = `${JSON.stringify(Object.fromEntries(records))}\n`;
      await atomicWrite(path, whole);
      length = Buffer.byteLength(whole);
      torn = false;
    } else {
      const file = await open(path, 'a', 0o600);
      try {
        torn = true;
        await file.writeFile(line);
        await file.sync();
        torn = false;
      } finally {
        await file.close();
      }
      length += Buffer.byteLength(line);
    }
    held = records;
  }

  return {
    read: () => inTurn(async () => ((await load()) === null ? null : Object.fromEntries(held!))),
    write: changes => inTurn(() => write(changes)),
  };
}

/** The changes of one line; null where it is none that was written whole. */
function lineOf(line: string): Record<string, string | null> | null {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return null;
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  const sound = Object.values(value).every(text => text === null || typeof text === 'string');
  return sound ? (value as Record<string, string | null>) : null;
}

function apply(records: Map<string, string>, changes: Readonly<Record<string, string | null>>): void {
  for (const [key, text] of Object.entries(changes)) {
    if (text === null) records.delete(key);
    else records.set(key, text);
  }
}

function sizeOf(records: ReadonlyMap<string, string>): number {
  let size = 0;
  for (const [key, text] of records) size += key.length + text.length;
  return size;
}
