import { z } from 'zod';
import type { PlainKey } from '../../core/language/index.ts';
import { type Arrival, arrival, say } from '../../main/host/index.ts';

const HANDED = /^#open=([\w-]+)$/;

/** A reload still belongs to the start that opened this window. */
const START = 'turnwright.start';

/**
 * Files named at `npm start`, which the local server gives once to the address it opened. The address is tidied
 * first, so that a reload opens nothing again.
 */
export async function takeHanded(): Promise<Arrival[]> {
  const key = HANDED.exec(location.hash)?.[1];
  if (!key) return [];
  sessionStorage.setItem(START, key);
  history.replaceState(null, '', location.pathname + location.search);
  const failed = (why: PlainKey): Arrival[] => [
    { ok: false, message: say({ key: 'host.handedNotOpened', values: { why: { key: why } } }) },
  ];
  try {
    const response = await fetch(`/handed/${key}`);
    if (!response.ok) return failed('host.handedAlready');
    const read = z.array(arrival).safeParse(await response.json());
    return read.success ? read.data : failed('host.handedBroken');
  } catch {
    return failed('host.serverSilent');
  }
}

/** Hears from the local server that it ends, and tells it when the work is down. Returns a function that stops. */
export function onServerEnding(putDown: () => Promise<void>): () => void {
  const key = sessionStorage.getItem(START);
  if (!key) return () => {};
  const stream = new EventSource(`/ending/${key}`);
  stream.addEventListener('ending', () => {
    stream.close();
    void putDown().finally(() => fetch(`/down/${key}`));
  });
  // The server has gone or is another one; asking it again and again would help nobody.
  stream.addEventListener('error', () => stream.close());
  return () => stream.close();
}
