import { z } from 'zod';
import { type Arrival, arrival } from '../../main/host/index.ts';

const HANDED = /^#open=([\w-]+)$/;

/**
 * Files named at `npm start`, which the local server gives once to the address it opened. The address is tidied
 * first, so that a reload opens nothing again.
 */
export async function takeHanded(): Promise<Arrival[]> {
  const key = HANDED.exec(location.hash)?.[1];
  if (!key) return [];
  history.replaceState(null, '', location.pathname + location.search);
  const failed = (why: string): Arrival[] => [
    { ok: false, message: `The files named at the start were not opened: ${why}. Open them from here.` },
  ];
  try {
    const response = await fetch(`/handed/${key}`);
    if (!response.ok) return failed('this address has given them already');
    const read = z.array(arrival).safeParse(await response.json());
    return read.success ? read.data : failed('they did not arrive whole');
  } catch {
    return failed('the local server does not answer');
  }
}
