import type { PlainKey } from '../../core/language/index.ts';
import {
  decodeText,
  type FileKind,
  MAX_TEXT,
  say,
  skisExtensions,
  tableExtensions,
} from '../../main/host/index.ts';

/** The part of a file handle the host needs; browsers without the interface never make one. */
export interface WritableFile {
  readonly name: string;
  getFile(): Promise<File>;
  isSameEntry?(other: WritableFile): Promise<boolean>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
}

interface Pickers {
  showOpenFilePicker?(options: object): Promise<WritableFile[]>;
  showSaveFilePicker?(options: object): Promise<WritableFile>;
}

/** A file as text, with what reading it took for granted. */
export interface FileContent {
  readonly text: string;
  readonly note?: string;
}

export interface PickedFile extends FileContent {
  readonly name: string;
  readonly writable: WritableFile | null;
}

const dotted = (extensions: readonly string[]) => extensions.map(each => `.${each}`);
const SKIS = { 'application/json': dotted(skisExtensions) };
const TABLES = { 'text/csv': dotted(tableExtensions) };

const accepted: Record<FileKind, { description: PlainKey; accept: Record<string, string[]> }> = {
  any: {
    description: 'host.everything',
    accept: { ...SKIS, ...TABLES },
  },
  skis: { description: 'host.pairsAndRacks', accept: SKIS },
  table: { description: 'host.tables', accept: TABLES },
  course: { description: 'host.gates', accept: TABLES },
};

/** As the browser's own dialogs offer them. */
const offered = (kind: FileKind) => ({
  ...accepted[kind],
  description: say({ key: accepted[kind].description }),
});

/** A file's text. @throws an error whose message names the file and says what is wrong with it */
export async function contentOf(file: File): Promise<FileContent> {
  if (file.size > MAX_TEXT)
    throw new Error(
      say({ key: 'disk.tooLong', values: { name: file.name, size: file.size, most: MAX_TEXT } }),
    );
  const bytes = await file.arrayBuffer().catch(() => {
    throw new Error(say({ key: 'disk.notRead', values: { name: file.name } }));
  });
  const decoded = decodeText(new Uint8Array(bytes), file.name);
  if (!decoded.ok)
    throw new Error(say({ key: 'disk.notText', values: { name: file.name, problem: decoded.problem } }));
  const { text, note } = decoded;
  return { text, ...(note === undefined ? {} : { note }) };
}

/** Asks for files; empty when cancelled. */
export async function pickFiles(kind: FileKind): Promise<PickedFile[]> {
  const { showOpenFilePicker } = window as Pickers;
  if (!showOpenFilePicker) return pickThroughInput(kind);
  try {
    const handles = await showOpenFilePicker.call(window, { multiple: true, types: [offered(kind)] });
    return await Promise.all(
      handles.map(async writable => ({
        name: writable.name,
        ...(await contentOf(await writable.getFile())),
        writable,
      })),
    );
  } catch (error) {
    if (isCancelled(error)) return [];
    throw error;
  }
}

/** Asks where to save: a handle, `null` where the browser can only download, or 'cancelled'. */
export async function pickTarget(name: string): Promise<WritableFile | null | 'cancelled'> {
  const { showSaveFilePicker } = window as Pickers;
  if (!showSaveFilePicker) return null;
  try {
    return await showSaveFilePicker.call(window, { suggestedName: name, types: [offered('skis')] });
  } catch (error) {
    if (isCancelled(error)) return 'cancelled';
    throw error;
  }
}

export async function writeTo(file: WritableFile, text: string): Promise<void> {
  const stream = await file.createWritable();
  await stream.write(text);
  // The browser swaps the finished file in on close, so a failure half-way leaves the old one whole.
  await stream.close();
}

function pickThroughInput(kind: FileKind): Promise<PickedFile[]> {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.accept = Object.values(accepted[kind].accept).flat().join(',');
  return new Promise((resolve, reject) => {
    input.addEventListener('cancel', () => resolve([]));
    input.addEventListener('change', () => {
      const reading = [...(input.files ?? [])].map(async file => ({
        name: file.name,
        ...(await contentOf(file)),
        writable: null,
      }));
      Promise.all(reading).then(resolve, reject);
    });
    input.click();
  });
}

function isCancelled(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}
