import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import { decodeText, MAX_TEXT, say } from '../host/index.ts';
import { whyNotRead } from './reason.ts';

/** A file a person named, as it lies on the disk and as text. */
export interface Document {
  readonly path: string;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly text: string;
  /** What reading it took for granted, in a sentence. */
  readonly note?: string;
}

/** @throws Error when the file is missing, a folder, too long or not text; the message names the file. */
export async function readDocument(given: string): Promise<Document> {
  const path = resolve(given);
  const name = basename(path);
  const found = await stat(path).catch(() => {
    throw new Error(say({ key: 'disk.notFound', values: { name, folder: dirname(path) } }));
  });
  if (!found.isFile()) throw new Error(say({ key: 'disk.folder', values: { name } }));
  if (found.size > MAX_TEXT) {
    throw new Error(say({ key: 'disk.tooLong', values: { name, size: found.size, most: MAX_TEXT } }));
  }
  const bytes = await readFile(path).catch((error: Error) => {
    throw new Error(say({ key: 'disk.notReadWhy', values: { name, why: whyNotRead(error) } }));
  });
  const decoded = decodeText(bytes, name);
  if (!decoded.ok) throw new Error(say({ key: 'disk.notText', values: { name, problem: decoded.problem } }));
  const { text, note } = decoded;
  return { path, name, bytes, text, ...(note === undefined ? {} : { note }) };
}
