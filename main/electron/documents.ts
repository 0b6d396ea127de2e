import { randomUUID } from 'node:crypto';
import { mkdir, readFile, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { z } from 'zod';
import { MAX_TEXT, type OpenedFile, type RecentFile, type SavedFile } from '../host/messages.ts';
import { atomicWrite } from './atomic-write.ts';

const RECENT_COUNT = 12;
const recentList = z.array(z.object({ token: z.string(), path: z.string() }));

export type Documents = ReturnType<typeof createDocuments>;

/**
 * The files a person has opened or named, each known to the renderer by a token only. The recent list and
 * the draft live in `folder`.
 */
export function createDocuments(folder: string) {
  const paths = new Map<string, string>();
  const recentPath = join(folder, 'recent.json');
  const draftPath = join(folder, 'draft.json');
  let recent: { token: string; path: string }[] | null = null;
  let remembering: Promise<unknown> = Promise.resolve();

  async function loadRecent() {
    if (!recent) {
      recent = await readFile(recentPath, 'utf8')
        .then(text => recentList.parse(JSON.parse(text)))
        // A missing or damaged list costs a person a few clicks; refusing to start would cost more.
        .catch(() => []);
      for (const { token, path } of recent) paths.set(token, path);
    }
    return recent;
  }

  /** Several files may arrive at once; each is added to the list the one before has left. */
  function remember(path: string): Promise<string> {
    const token = remembering.then(() => addRecent(path));
    remembering = token.catch(() => {});
    return token;
  }

  async function addRecent(path: string): Promise<string> {
    const known = await loadRecent();
    const token = [...paths].find(entry => entry[1] === path)?.[0] ?? randomUUID();
    paths.set(token, path);
    recent = [{ token, path }, ...known.filter(entry => entry.path !== path)].slice(0, RECENT_COUNT);
    await mkdir(folder, { recursive: true });
    await atomicWrite(recentPath, JSON.stringify(recent, null, 2));
    return token;
  }

  async function pathOf(token: string): Promise<string> {
    await loadRecent();
    const path = paths.get(token);
    if (!path) throw new Error('This file is not open any more; open it again or use Save as.');
    return path;
  }

  /** @throws when the file is missing, too long or not UTF-8 text; the message names the file. */
  async function open(given: string): Promise<OpenedFile> {
    const path = resolve(given);
    const name = basename(path);
    const { size } = await stat(path).catch(() => {
      throw new Error(`${name} could not be found in ${dirname(path)}.`);
    });
    if (size > MAX_TEXT) {
      throw new Error(`${name} has ${size} bytes; up to ${MAX_TEXT} are accepted.`);
    }
    const bytes = await readFile(path).catch((error: Error) => {
      throw new Error(`${name} could not be read: ${error.message}`);
    });
    let text: string;
    try {
      text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
      throw new Error(`${name} is not UTF-8 text.`);
    }
    return { token: await remember(path), name, text };
  }

  async function write(path: string, text: string): Promise<SavedFile> {
    await atomicWrite(path, text, { backup: true }).catch((error: Error) => {
      throw new Error(`${basename(path)} could not be saved: ${error.message}`);
    });
    return { token: await remember(path), name: basename(path) };
  }

  return {
    open,
    saveAs: (path: string, text: string) => write(resolve(path), text),
    reopen: async (token: string) => open(await pathOf(token)),
    save: async (token: string, text: string) => write(await pathOf(token), text),
    recent: async (): Promise<RecentFile[]> =>
      (await loadRecent()).map(({ token, path }) => ({ token, name: basename(path), folder: dirname(path) })),
    readDraft: (): Promise<string | null> =>
      readFile(draftPath, 'utf8').then(
        text => text || null,
        () => null,
      ),
    async writeDraft(text: string | null) {
      await mkdir(folder, { recursive: true });
      // Clearing empties the file rather than removing it: the backup then still holds the last draft.
      await atomicWrite(draftPath, text ?? '', { backup: true });
    },
  };
}
