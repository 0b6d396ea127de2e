import { randomUUID } from 'node:crypto';
import { copyFile, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Replaces a file whole or not at all: the new content is written and flushed beside it, then renamed over
 * it, so neither a crash nor a full disk leaves half a file. With `backup` the old content stays as
 * `NAME.bak`.
 */
export async function atomicWrite(path: string, content: string | Uint8Array, { backup = false } = {}) {
  // A link keeps pointing where it did: what it points at is replaced.
  const target = await realpath(path).catch(() => path);
  const existing = await stat(target).catch(() => null);
  // Renaming over it would get past the mark that says nobody may write to it.
  if (existing && (existing.mode & 0o222) === 0) throw new Error('the file is marked read-only');
  // Two writes of one file at once must not share what they write beside it: the later rename wins.
  const beside = join(dirname(target), `.${basename(target)}.${randomUUID()}.new`);
  try {
    const file = await open(beside, 'w', existing?.mode ?? 0o644);
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    if (backup && existing) await copyFile(target, `${target}.bak`);
    await rename(beside, target);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
