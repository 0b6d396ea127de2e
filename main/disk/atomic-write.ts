import { randomUUID } from 'node:crypto';
import { open, readdir, readFile, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { say } from '../host/index.ts';

/** What a write that was cut short leaves behind is swept once no write can still be at work on it. */
const STRAY_AFTER_MS = 10 * 60_000;

/** The last write asked for of every file that is being written. */
const underway = new Map<string, Promise<void>>();

/**
 * Replaces a file whole or not at all: the new content is written and flushed beside it, then renamed over
 * it, so neither a crash nor a full disk leaves half a file. With `backup` the old content stays as
 * `NAME.bak`, put there in the same way. Writes of one file follow each other in the order they were asked for.
 */
export async function atomicWrite(path: string, content: string | Uint8Array, { backup = false } = {}) {
  const before = underway.get(path);
  const write = (before ?? Promise.resolve()).catch(() => {}).then(() => replace(path, content, backup));
  underway.set(path, write);
  try {
    await write;
  } finally {
    if (underway.get(path) === write) underway.delete(path);
  }
}

async function replace(path: string, content: string | Uint8Array, backup: boolean): Promise<void> {
  // A link keeps pointing where it did: what it points at is replaced.
  const target = await realpath(path).catch(() => path);
  const existing = await stat(target).catch(() => null);
  // Renaming over it would get past the mark that says nobody may write to it.
  if (existing && (existing.mode & 0o222) === 0) throw new Error(say({ key: 'disk.markedReadOnly' }));
  await sweep(target);
  const mode = existing?.mode ?? 0o644;
  if (backup && existing?.isFile()) await put(`${target}.bak`, await readFile(target), mode);
  await put(target, content, mode);
}

async function put(target: string, content: string | Uint8Array, mode: number): Promise<void> {
  // Another program's write of the same file must not share what is written beside it.
  const beside = join(dirname(target), `.${basename(target)}.${randomUUID()}.new`);
  try {
    const file = await open(beside, 'w', mode);
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(beside, target);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

/** Removes what earlier writes of this file, and of its backup, left when they were cut short. */
async function sweep(target: string): Promise<void> {
  const folder = dirname(target);
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    if (!isStrayOf(basename(target), name)) continue;
    const stray = join(folder, name);
    const found = await stat(stray).catch(() => null);
    if (found && Date.now() - found.mtimeMs > STRAY_AFTER_MS) await rm(stray, { force: true });
  }
}

const STRAY_END = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\.new$/;

function isStrayOf(file: string, name: string): boolean {
  const start = [`.${file}.bak.`, `.${file}.`].find(each => name.startsWith(each));
  return start !== undefined && STRAY_END.test(name.slice(start.length));
}
