import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import { decodeText, MAX_TEXT } from '../host/index.ts';
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
    throw new Error(`${name} could not be found in ${dirname(path)}.`);
  });
  if (!found.isFile()) throw new Error(`${name} is a folder; give a file.`);
  if (found.size > MAX_TEXT) {
    throw new Error(`${name} has ${found.size} bytes; up to ${MAX_TEXT} are accepted.`);
  }
  const bytes = await readFile(path).catch((error: Error) => {
    throw new Error(`${name} could not be read: ${whyNotRead(error)}.`);
  });
  const decoded = decodeText(bytes, name);
  if (!decoded.ok) throw new Error(`${name} ${decoded.problem}.`);
  const { text, note } = decoded;
  return { path, name, bytes, text, ...(note === undefined ? {} : { note }) };
}
