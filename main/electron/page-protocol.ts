import type { Protocol } from 'electron';
import { readPageFile, safeHeaders } from '../web/index.ts';

const PAGE_SCHEME = 'app';
const PAGE_HOST = 'turnwright';
export const PAGE_ADDRESS = `${PAGE_SCHEME}://${PAGE_HOST}/`;

/** Must run before the app is ready: makes `app://` an origin of its own, with storage and workers. */
export function registerPageScheme(protocol: Protocol): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: PAGE_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Answers `app://turnwright/…` from the built page's folder and nothing else. */
export function servePageScheme(protocol: Protocol, root: string): void {
  protocol.handle(PAGE_SCHEME, async request => {
    const { host, pathname } = new URL(request.url);
    const file = host === PAGE_HOST && request.method === 'GET' ? await readPageFile(root, pathname) : null;
    if (!file) return new Response('No such file\n', { status: 404, headers: safeHeaders });
    return new Response(new Uint8Array(file.bytes), {
      headers: { ...safeHeaders, 'content-type': file.mime },
    });
  });
}

/** Whether an address is of the program’s own page. */
export function isPageAddress(address: string): boolean {
  return address.startsWith(PAGE_ADDRESS);
}
