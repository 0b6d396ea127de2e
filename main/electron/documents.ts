import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { z } from 'zod';
import { atomicWrite, readDocument, whyNotRead, whyNotWritten } from '../disk/index.ts';
import { type FileKind, kindOf, type OpenedFile, type RecentFile, type SavedFile } from '../host/index.ts';

const RECENT_COUNT = 12;
/** Files remembered beyond those listed, so that work kept from before can still be saved where it was. */
const KNOWN_COUNT = 500;

const knownFiles = z.array(
  z.object({
    token: z.string(),
    path: z.string(),
    /** Of the content last read or written here; a file that differs was changed by something else. */
    digest: z.string().optional(),
    /** Not offered among the recent files: a table, a set of gates. */
    unlisted: z.boolean().optional(),
  }),
);
type KnownFile = z.infer<typeof knownFiles>[number];

export type Documents = ReturnType<typeof createDocuments>;

/**
 * The files a person has opened or named, each known to the renderer by a token only. The list of them and
 * the draft live in `folder`.
 */
export function createDocuments(folder: string) {
  const recentPath = join(folder, 'recent.json');
  const draftPath = join(folder, 'draft.json');
  let known: KnownFile[] | null = null;
  let remembering: Promise<unknown> = Promise.resolve();

  async function loadKnown(): Promise<KnownFile[]> {
    known ??= await readFile(recentPath, 'utf8')
      .then(text => knownFiles.parse(JSON.parse(text)))
      // A missing or damaged list costs a person a few clicks; refusing to start would cost more.
      .catch(() => []);
    return known;
  }

  /** Several files may arrive at once; each is added to the list the one before has left. */
  function remember(path: string, content: Uint8Array | string, kind: FileKind): Promise<string> {
    const token = remembering.then(() => addKnown(path, digestOf(content), kind));
    remembering = token.catch(() => {});
    return token;
  }

  async function addKnown(path: string, digest: string, kind: FileKind): Promise<string> {
    const before = await loadKnown();
    const token = before.find(each => each.path === path)?.token ?? randomUUID();
    const file: KnownFile = { token, path, digest, ...(kind === 'skis' ? {} : { unlisted: true }) };
    known = [file, ...before.filter(each => each.path !== path)].slice(0, KNOWN_COUNT);
    // The list is a convenience: a full disk must not make an opened file seem unopened.
    await mkdir(folder, { recursive: true })
      .then(() => atomicWrite(recentPath, JSON.stringify(known, null, 2)))
      .catch(() => {});
    return token;
  }

  async function fileOf(token: string): Promise<KnownFile> {
    const file = (await loadKnown()).find(each => each.token === token);
    if (!file) throw new Error('This file is not open any more; open it again or use Save as.');
    return file;
  }

  /** @throws when the file is missing, a folder, too long or not text; the message names the file. */
  async function open(given: string, kind: FileKind = kindOf(given)): Promise<OpenedFile> {
    const { path, name, bytes, text, note } = await readDocument(given);
    const token = await remember(path, bytes, kind);
    return { token, name, text, ...(note === undefined ? {} : { note }) };
  }

  async function write(path: string, text: string): Promise<SavedFile> {
    await atomicWrite(path, text, { backup: true }).catch((error: Error) => {
      throw new Error(`${basename(path)} could not be written: ${whyNotWritten(error)}`);
    });
    return { token: await remember(path, text, kindOf(path)), name: basename(path) };
  }

  async function save(token: string, text: string): Promise<SavedFile> {
    const { path, digest } = await fileOf(token);
    const present = await readFile(path).catch(() => null);
    if (present && digest !== undefined && digestOf(present) !== digest) {
      throw new Error(
        `${basename(path)} was changed by something else since it was opened here, so it is left as it is. ` +
          'Use Save as, or open it again to see what changed.',
      );
    }
    return write(path, text);
  }

  return {
    open,
    save,
    saveAs: (path: string, text: string) => write(resolve(path), text),
    reopen: async (token: string) => open((await fileOf(token)).path),
    recent: async (): Promise<RecentFile[]> =>
      (await loadKnown())
        .filter(each => !each.unlisted)
        .slice(0, RECENT_COUNT)
        .map(({ token, path }) => ({ token, name: basename(path), folder: dirname(path) })),
    readDraft: (): Promise<string | null> =>
      readFile(draftPath, 'utf8').then(
        text => text || null,
        (error: NodeJS.ErrnoException) => {
          if (error.code === 'ENOENT') return null;
          // Told as none, it would be written over.
          throw new Error(whyNotRead(error));
        },
      ),
    async writeDraft(text: string | null) {
      await mkdir(folder, { recursive: true });
      // Clearing empties the file rather than removing it: the backup then still holds the last draft.
      await atomicWrite(draftPath, text ?? '', { backup: true }).catch((error: Error) => {
        throw new Error(whyNotWritten(error));
      });
    },
  };
}

const digestOf = (content: Uint8Array | string): string => createHash('sha256').update(content).digest('hex');
