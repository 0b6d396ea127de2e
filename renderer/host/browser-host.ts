import {
  type ActionName,
  type Arrival,
  commandFor,
  type FileKind,
  type Host,
  kindOf,
  type OpenedFile,
  type RecentFile,
  type SavedFile,
  say,
} from '../../main/host/index.ts';
import { contentOf, pickFiles, pickTarget, type WritableFile, writeTo } from './file-access.ts';
import { onServerEnding, takeHanded } from './handed.ts';
import { createRecentCopies } from './recent-copies.ts';
import { createWindowDraft } from './window-draft.ts';

interface Known {
  readonly name: string;
  readonly writable: WritableFile | null;
  /** As last read or written here. */
  readonly text: string;
}

/**
 * The host of a plain browser page. Files open through the File System Access interface where the browser
 * has it, so that saving writes back; otherwise through a file input, and saving downloads.
 */
export function createBrowserHost(): Host {
  const files = new Map<string, Known>();
  const copies = createRecentCopies();
  const commandListeners = new Set<(command: ActionName) => void>();
  const arrivalListeners = new Set<(arrival: Arrival) => void>();
  let unsaved: readonly string[] = [];
  let waiting: Arrival[] = [];

  const arrive = (arrival: Arrival) => {
    if (arrivalListeners.size === 0) waiting.push(arrival);
    for (const listener of arrivalListeners) listener(arrival);
  };
  const draft = createWindowDraft(count =>
    arrive({
      ok: false,
      message: say({ key: 'host.otherWindows', values: { count } }),
    }),
  );
  /**
   * Resolves once the copy is down: the browser gives up the writes of a page that is reloaded or closed, so a file
   * that was shown before could be missing among the recent ones.
   */
  const remember = async (
    name: string,
    text: string,
    writable: WritableFile | null,
    kind: FileKind,
    token: string = crypto.randomUUID(),
  ): Promise<string> => {
    files.set(token, { name, writable, text });
    if (kind === 'skis' && !(await copies.keep(token, name, text))) {
      // Behind the file itself, whose own message would take its place.
      setTimeout(() => arrive({ ok: false, message: say({ key: 'host.noRoom', values: { name } }) }));
    }
    return token;
  };
  /** The same file opened again keeps its token, so that the rack knows it for the same. */
  const tokenOf = async (writable: WritableFile | null): Promise<string | undefined> => {
    if (!writable) return undefined;
    for (const [token, known] of files) if (await known.writable?.isSameEntry?.(writable)) return token;
    return undefined;
  };

  window.addEventListener('keydown', event => {
    const command = commandFor(event);
    if (!command || commandListeners.size === 0) return;
    event.preventDefault();
    for (const listener of commandListeners) listener(command);
  });
  window.addEventListener('dragover', event => event.preventDefault());
  window.addEventListener('drop', event => {
    event.preventDefault();
    for (const file of event.dataTransfer?.files ?? []) {
      const kind = kindOf(file.name);
      contentOf(file)
        .then(async read => {
          const token = await remember(file.name, read.text, null, kind);
          arrive({ ok: true, file: { token, name: file.name, ...read } });
        })
        .catch((error: Error) => arrive({ ok: false, message: error.message }));
    }
  });
  takeHanded().then(async all => {
    for (const each of all) {
      if (!each.ok) arrive(each);
      else {
        const { name, text } = each.file;
        const token = await remember(name, text, null, kindOf(name));
        arrive({ ok: true, file: { ...each.file, token } });
      }
    }
  });
  window.addEventListener('beforeunload', event => {
    if (unsaved.length > 0) event.preventDefault();
  });

  return {
    kind: 'browser',
    async open(kind: FileKind): Promise<OpenedFile[]> {
      const picked = await pickFiles(kind);
      return Promise.all(
        picked.map(async ({ writable, ...read }) => ({
          token: await remember(
            read.name,
            read.text,
            writable,
            kind === 'any' ? kindOf(read.name) : kind,
            await tokenOf(writable),
          ),
          ...read,
        })),
      );
    },
    async recent(): Promise<RecentFile[]> {
      return copies.all();
    },
    async reopen(token: string): Promise<OpenedFile> {
      const copy = await copies.read(token);
      if (!copy) throw new Error(say({ key: 'host.notRecent' }));
      const { name } = copy;
      const writable = files.get(token)?.writable ?? null;
      const file = await writable?.getFile().catch(() => {
        throw new Error(say({ key: 'host.moved', values: { name } }));
      });
      const text = file ? (await contentOf(file)).text : copy.text;
      await remember(name, text, writable, 'skis', token);
      return { token, name, text };
    },
    async save(token: string, text: string): Promise<SavedFile> {
      const known = files.get(token) ?? (await copies.read(token));
      if (!known) throw new Error(say({ key: 'host.notOpen' }));
      const writable = files.get(token)?.writable ?? null;
      if (writable) {
        const present = await writable.getFile().then(
          file => contentOf(file).then(read => read.text),
          () => null,
        );
        if (present !== null && present !== files.get(token)!.text) {
          throw new Error(say({ key: 'host.changedOutside', values: { name: known.name } }));
        }
        await writeTo(writable, text);
      } else download(known.name, 'application/json', text);
      await remember(known.name, text, writable, 'skis', token);
      return { token, name: known.name };
    },
    async saveAs(name: string, text: string): Promise<SavedFile | null> {
      const target = await pickTarget(name);
      if (target === 'cancelled') return null;
      if (target) await writeTo(target, text);
      else download(name, 'application/json', text);
      const savedName = target?.name ?? name;
      const token = await remember(savedName, text, target, 'skis', await tokenOf(target));
      return { token, name: savedName };
    },
    async exportFile(name: string, mime: string, data: string | Uint8Array): Promise<boolean> {
      download(name, mime, data);
      return true;
    },
    async printPdf(): Promise<boolean> {
      window.print();
      return true;
    },
    onCommand(listener) {
      commandListeners.add(listener);
      return () => commandListeners.delete(listener);
    },
    onArrival(listener) {
      arrivalListeners.add(listener);
      const early = waiting;
      waiting = [];
      for (const arrival of early) listener(arrival);
      return () => arrivalListeners.delete(listener);
    },
    // A page cannot hold its window open; the browser's own question is all there is (see `setUnsaved`).
    onClosing: () => () => {},
    setUnsaved(names) {
      unsaved = names;
    },
    draft: {
      read: draft.read,
      write: changes => draft.write(changes, unsaved.length),
      leave: changes => draft.leave(changes, unsaved.length),
    },
    onEnding: onServerEnding,
  };
}

function download(name: string, mime: string, data: string | Uint8Array): void {
  const address = URL.createObjectURL(new Blob([data as BlobPart], { type: mime }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
