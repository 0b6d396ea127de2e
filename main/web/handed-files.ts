import { readDocument } from '../disk/index.ts';
import type { Arrival } from '../host/index.ts';

/** Files named at the start, read for a page that cannot look where they lie; a failure is one of them. */
export function readHanded(paths: readonly string[]): Promise<Arrival[]> {
  return Promise.all(
    paths.map(path => read(path).catch((error: Error): Arrival => ({ ok: false, message: error.message }))),
  );
}

async function read(path: string): Promise<Arrival> {
  const { name, text, note } = await readDocument(path);
  return { ok: true, file: { token: 'handed', name, text, ...(note === undefined ? {} : { note }) } };
}
