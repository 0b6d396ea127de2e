import { readFile, stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { plainReason } from './electron/plain-reason.ts';
import { decodeText, kindOf } from './host/decode-text.ts';
import type { Arrival } from './host/host.ts';
import { MAX_TEXT } from './host/messages.ts';

/** Files named at the start, read for a page that cannot look where they lie; a failure is one of them. */
export function readHanded(paths: readonly string[]): Promise<Arrival[]> {
  return Promise.all(
    paths.map(path => read(path).catch((error: Error): Arrival => ({ ok: false, message: error.message }))),
  );
}

async function read(path: string): Promise<Arrival> {
  const name = basename(path);
  const found = await stat(path).catch(() => {
    throw new Error(`${name} could not be found in ${dirname(path)}.`);
  });
  if (!found.isFile()) throw new Error(`${name} is a folder; give a file.`);
  if (found.size > MAX_TEXT) {
    throw new Error(`${name} has ${found.size} bytes; up to ${MAX_TEXT} are accepted.`);
  }
  const bytes = await readFile(path).catch((error: Error) => {
    throw new Error(`${name} could not be read: ${plainReason(error)}`);
  });
  const decoded = decodeText(bytes, kindOf(name));
  if (!decoded) throw new Error(`${name} is not UTF-8 text.`);
  return { ok: true, file: { token: 'handed', name, ...decoded } };
}
