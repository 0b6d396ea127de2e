import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readFile, rename } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { z } from 'zod';
import { atomicWrite, openJournal, readDocument, whyNotRead, whyNotWritten } from '../disk/index.ts';
import {
  type DraftChanges,
  type DraftRecords,
  type FileKind,
  isDroppable,
  isDroppableName,
  kindOf,
  type OpenedFile,
  openedExtensions,
  type RecentFile,
  type SavedFile,
  say,
} from '../host/index.ts';

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
    /** Its path came from the page, with a drop: it is written to only once the person has said so here. */
    unconfirmed: z.boolean().optional(),
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
  /** The draft as one text, as the first versions kept it. */
  const wholeDraftPath = join(folder, 'draft.json');
  const draft = openJournal(join(folder, 'draft.journal'));
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
  function remember(
    path: string,
    content: Uint8Array | string,
    kind: FileKind,
    unconfirmed = false,
  ): Promise<string> {
    const token = remembering.then(() => addKnown(path, digestOf(content), kind, unconfirmed));
    remembering = token.catch(() => {});
    return token;
  }

  async function addKnown(
    path: string,
    digest: string,
    kind: FileKind,
    unconfirmed: boolean,
  ): Promise<string> {
    const before = await loadKnown();
    const same = before.find(each => each.path === path);
    const token = same?.token ?? randomUUID();
    const file: KnownFile = {
      token,
      path,
      digest,
      ...(kind === 'skis' ? {} : { unlisted: true }),
      // A file the person has named here before stays theirs to write, dropped or not.
      ...(unconfirmed && (same === undefined || same.unconfirmed) ? { unconfirmed } : {}),
    };
    known = [file, ...before.filter(each => each.path !== path)].slice(0, KNOWN_COUNT);
    // The list is a convenience: a full disk must not make an opened file seem unopened.
    await mkdir(folder, { recursive: true })
      .then(() => atomicWrite(recentPath, JSON.stringify(known, null, 2)))
      .catch(() => {});
    return token;
  }

  async function fileOf(token: string): Promise<KnownFile> {
    const file = (await loadKnown()).find(each => each.token === token);
    if (!file) throw new Error(say({ key: 'host.notOpen' }));
    return file;
  }

  /** @throws when the file is missing, a folder, too long or not text; the message names the file. */
  async function open(given: string, kind: FileKind = kindOf(given)): Promise<OpenedFile> {
    const { path, name, bytes, text, note } = await readDocument(given);
    const token = await remember(path, bytes, kind);
    return { token, name, text, ...(note === undefined ? {} : { note }) };
  }

  /**
   * Opens a path that came from the page with a drop. Only what a drop can bring is read: a file that holds one
   * of the program's own kinds. Nothing else of the disk is to be had by naming its path.
   *
   * @throws as `open`, and for a file of another kind
   */
  async function openDropped(given: string): Promise<OpenedFile> {
    const name = basename(given);
    if (!isDroppableName(name)) {
      throw new Error(
        say({
          key: 'host.wrongEnding',
          values: { name, endings: openedExtensions.map(each => `.${each}`) },
        }),
      );
    }
    const { path, bytes, text, note } = await readDocument(given);
    if (!isDroppable(text, name)) {
      throw new Error(say({ key: 'host.wrongKind', values: { name } }));
    }
    const token = await remember(path, bytes, kindOf(path), true);
    return { token, name, text, ...(note === undefined ? {} : { note }) };
  }

  async function write(path: string, text: string): Promise<SavedFile> {
    await atomicWrite(path, text, { backup: true }).catch((error: Error) => {
      throw new Error(
        say({ key: 'disk.notWritten', values: { name: basename(path), why: whyNotWritten(error) } }),
      );
    });
    return { token: await remember(path, text, kindOf(path)), name: basename(path) };
  }

  async function saveNow(token: string, text: string): Promise<SavedFile> {
    const { path, digest, unconfirmed } = await fileOf(token);
    if (unconfirmed) throw new Error(say({ key: 'host.forReading', values: { name: basename(path) } }));
    const present = await readFile(path).catch(() => null);
    if (present && digest !== undefined && digestOf(present) !== digest) {
      throw new Error(say({ key: 'host.changedOutside', values: { name: basename(path) } }));
    }
    return write(path, text);
  }

  /** One after the other: what a save finds on the disk is what the one before it has left. */
  let saving: Promise<unknown> = Promise.resolve();
  function save(token: string, text: string): Promise<SavedFile> {
    const mine = saving.then(() => saveNow(token, text));
    saving = mine.catch(() => {});
    return mine;
  }

  return {
    open,
    openDropped,
    save,
    /** The file's name and folder while it is for reading only, else null. */
    async unconfirmed(token: string): Promise<{ name: string; folder: string } | null> {
      const { path, unconfirmed } = await fileOf(token);
      return unconfirmed ? { name: basename(path), folder: dirname(path) } : null;
    },
    /** The person has said that this file may be written to. */
    async confirm(token: string): Promise<void> {
      const { unconfirmed, ...file } = await fileOf(token);
      known = (await loadKnown()).map(each => (each.token === token ? file : each));
    },
    saveAs: (path: string, text: string) => write(resolve(path), text),
    reopen: async (token: string) => open((await fileOf(token)).path),
    recent: async (): Promise<RecentFile[]> =>
      (await loadKnown())
        .filter(each => !each.unlisted)
        .slice(0, RECENT_COUNT)
        .map(({ token, path }) => ({ token, name: basename(path), folder: dirname(path) })),
    async readDraft(): Promise<DraftRecords | null> {
      const held = await draft.read().catch((error: unknown) => {
        // Told as none, it would be written over.
        throw new Error(whyNotRead(error));
      });
      if (held !== null) return held;
      const whole = await readFile(wholeDraftPath, 'utf8').catch((error: NodeJS.ErrnoException) => {
        if (error.code === 'ENOENT') return '';
        throw new Error(whyNotRead(error));
      });
      return whole === '' ? null : { whole };
    },
    async writeDraft(changes: DraftChanges): Promise<void> {
      await draft.write(changes).catch((error: unknown) => {
        throw new Error(whyNotWritten(error));
      });
      // Its work stands in the journal now; kept beside it all the same.
      await rename(wholeDraftPath, `${wholeDraftPath}.bak`).catch(() => {});
    },
  };
}

const digestOf = (content: Uint8Array | string): string => createHash('sha256').update(content).digest('hex');
