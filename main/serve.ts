import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { safeHeaders } from './content-policy.ts';
import { readPageFile } from './page-files.ts';

export interface PageServer {
  readonly address: string;
  /** Resolves once every connection is closed. */
  close(): Promise<void>;
}

/**
 * Serves the built page to this machine only. A request must name this very address as its host: a page
 * elsewhere that points its own name at 127.0.0.1 is refused.
 *
 * @param root folder of the built page
 * @param port 0 for any free one
 */
export async function servePage(root: string, port = 0): Promise<PageServer> {
  const server = createServer(async (request, response) => {
    const refuse = (status: number, text: string) =>
      response.writeHead(status, { ...safeHeaders, 'content-type': 'text/plain' }).end(`${text}\n`);
    const { port: own } = server.address() as AddressInfo;
    const host = request.headers.host ?? '';
    if (host !== `127.0.0.1:${own}` && host !== `localhost:${own}`) return refuse(403, 'Not this address');
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'Only reading');
    const file = await readPageFile(root, (request.url ?? '/').split('?')[0]);
    if (!file) return refuse(404, 'No such file');
    response.writeHead(200, {
      ...safeHeaders,
      'content-type': file.mime,
      'content-length': file.bytes.length,
    });
    response.end(request.method === 'HEAD' ? undefined : file.bytes);
  });
  await listen(server, port);
  const { port: own } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${own}/`,
    close: () =>
      new Promise(resolve => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
}
