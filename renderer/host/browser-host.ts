import type {
  Arrival,
  FileKind,
  Host,
  MenuCommand,
  OpenedFile,
  RecentFile,
  SavedFile,
} from '../../main/host/host.ts';
import { commandFor } from '../../main/host/shortcuts.ts';
import { pickFiles, pickTarget, type WritableFile, writeTo } from './file-access.ts';

const RECENT_KEY = 'turnwright.recent';
const DRAFT_KEY = 'turnwright.draft';
const RECENT_COUNT = 8;
/** A copy longer than this is not kept among the recent files: local storage holds about five megabytes. */
const RECENT_TEXT = 300_000;

interface RecentCopy extends RecentFile {
  readonly text: string;
}

/**
 * The host of a plain browser page. Files open through the File System Access interface where the browser
 * has it, so that saving writes back; otherwise through a file input, and saving downloads.
 */
export function createBrowserHost(): Host {
  const files = new Map<string, { name: string; writable: WritableFile | null }>();
  const commandListeners = new Set<(command: MenuCommand) => void>();
  const arrivalListeners = new Set<(arrival: Arrival) => void>();
  let unsaved: readonly string[] = [];

  const remember = (
    name: string,
    text: string,
    writable: WritableFile | null,
    token: string = crypto.randomUUID(),
  ) => {
    files.set(token, { name, writable });
    const others = readRecent().filter(copy => copy.token !== token && copy.name !== name);
    const kept = text.length <= RECENT_TEXT ? [{ token, name, folder: '', text }, ...others] : others;
    localStorage.setItem(RECENT_KEY, JSON.stringify(kept.slice(0, RECENT_COUNT)));
    return token;
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
      file.text().then(
        text => {
          const token = remember(file.name, text, null);
          for (const listener of arrivalListeners)
            listener({ ok: true, file: { token, name: file.name, text } });
        },
        () => {
          for (const listener of arrivalListeners) {
            listener({ ok: false, message: `${file.name} could not be read.` });
          }
        },
      );
    }
  });
  window.addEventListener('beforeunload', event => {
    if (unsaved.length > 0) event.preventDefault();
  });

  return {
    kind: 'browser',
    async open(kind: FileKind): Promise<OpenedFile[]> {
      const picked = await pickFiles(kind);
      return picked.map(({ name, text, writable }) => ({
        token: remember(name, text, writable),
        name,
        text,
      }));
    },
    async recent(): Promise<RecentFile[]> {
      return readRecent().map(({ token, name, folder }) => ({ token, name, folder }));
    },
    async reopen(token: string): Promise<OpenedFile> {
      const copy = readRecent().find(each => each.token === token);
      if (!copy) throw new Error('This file is no longer among the recent ones; open it again.');
      const writable = files.get(token)?.writable ?? null;
      const text = writable ? await (await writable.getFile()).text() : copy.text;
      remember(copy.name, text, writable, token);
      return { token, name: copy.name, text };
    },
    async save(token: string, text: string): Promise<SavedFile> {
      const known = files.get(token) ?? readRecent().find(each => each.token === token);
      if (!known) throw new Error('This file is not open any more; use Save as.');
      const writable = files.get(token)?.writable ?? null;
      if (writable) await writeTo(writable, text);
      else download(known.name, 'application/json', text);
      remember(known.name, text, writable, token);
      return { token, name: known.name };
    },
    async saveAs(name: string, text: string): Promise<SavedFile | null> {
      const target = await pickTarget(name);
      if (target === 'cancelled') return null;
      if (target) await writeTo(target, text);
      else download(name, 'application/json', text);
      const savedName = target?.name ?? name;
      return { token: remember(savedName, text, target), name: savedName };
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
      return () => arrivalListeners.delete(listener);
    },
    setUnsaved(names) {
      unsaved = names;
    },
    draft: {
      async read() {
        return localStorage.getItem(DRAFT_KEY);
      },
      async write(text) {
        if (text === null) localStorage.removeItem(DRAFT_KEY);
        else localStorage.setItem(DRAFT_KEY, text);
      },
    },
  };
}

function readRecent(): RecentCopy[] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(RECENT_KEY) ?? '[]');
    return Array.isArray(stored) ? stored.filter(isCopy) : [];
  } catch {
    return [];
  }
}

function isCopy(value: unknown): value is RecentCopy {
  const copy = value as Partial<RecentCopy> | null;
  return typeof copy?.token === 'string' && typeof copy.name === 'string' && typeof copy.text === 'string';
}

function download(name: string, mime: string, data: string | Uint8Array): void {
  const address = URL.createObjectURL(new Blob([data as BlobPart], { type: mime }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
