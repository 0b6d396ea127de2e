import { randomUUID } from 'node:crypto';
import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { PlainKey } from '../../core/language/index.ts';
import { type Arrival, say } from '../host/index.ts';
import { safeHeaders } from './content-policy.ts';
import { readPageFile } from './page-files.ts';

export interface PageServer {
  readonly address: string;
  /** The address to open first: it also brings the files handed over, once, and hears of the end. */
  readonly opening: string;
  /**
   * Tells the window at the opening address that the program ends, and waits until its work is down, the window is
   * gone or `patience` (ms) is over; false when it is over. At once when no window listens.
   */
  ending(patience: number): Promise<boolean>;
  /** Resolves once every connection is closed. */
  close(): Promise<void>;
}

const READING = ['GET', 'HEAD'];

/**
 * Serves the built page to this machine only. A request must name this very address as its host: a page
 * elsewhere that points its own name at 127.0.0.1 is refused.
 *
 * @param root folder of the built page
 * @param port 0 for any free one
 * @param handed files for the page to open: given once, to whoever knows the opening address
 */
export async function servePage(
  root: string,
  port = 0,
  handed: readonly Arrival[] = [],
): Promise<PageServer> {
  const key = randomUUID();
  /** The event stream of the window that was opened first. */
  let listener: ServerResponse | null = null;
  let down: (() => void) | null = null;
  const listening = (response: ServerResponse) => {
    response.writeHead(200, {
      ...safeHeaders,
      'content-type': 'text/event-stream',
      'cache-control': 'no-store',
    });
    response.write(':\n\n');
    listener = response;
    response.once('close', () => {
      if (listener !== response) return;
      listener = null;
      down?.();
    });
  };
  let waiting: string | null = JSON.stringify(handed);
  const server = createServer(async (request, response) => {
    const refuse = (status: number, why: PlainKey) =>
      response
        .writeHead(status, { ...safeHeaders, 'content-type': 'text/plain; charset=utf-8' })
        .end(`${say({ key: why })}\n`);
    const { port: own } = server.address() as AddressInfo;
    // Of two host names nobody can say which is meant.
    const [host, another] = request.headersDistinct.host ?? [];
    if (another !== undefined) return refuse(400, 'web.oneHost');
    if (host !== `127.0.0.1:${own}` && host !== `localhost:${own}`) return refuse(403, 'web.notThisAddress');
    if (!READING.includes(request.method ?? '')) {
      response.setHeader('allow', READING.join(', '));
      return refuse(405, 'web.onlyReading');
    }
    if (request.method === 'GET' && request.url === `/ending/${key}`) return listening(response);
    if (request.method === 'GET' && request.url === `/down/${key}`) {
      response.writeHead(204, safeHeaders).end();
      down?.();
      return;
    }
    if (waiting !== null && request.method === 'GET' && request.url === `/handed/${key}`) {
      response.writeHead(200, {
        ...safeHeaders,
        'content-type': 'application/json',
        'cache-control': 'no-store',
      });
      response.end(waiting);
      if (handed.length > 0) waiting = null;
      return;
    }
    const file = await readPageFile(root, (request.url ?? '/').split('?')[0]);
    if (!file) return refuse(404, 'web.noSuchFile');
    response.writeHead(200, {
      ...safeHeaders,
      'content-type': file.mime,
      'content-length': file.bytes.length,
    });
    response.end(request.method === 'HEAD' ? undefined : file.bytes);
  });
  await listen(server, port);
  const { port: own } = server.address() as AddressInfo;
  const address = `http://127.0.0.1:${own}/`;
  return {
    address,
    opening: `${address}#open=${key}`,
    ending: patience =>
      new Promise(resolve => {
        if (listener === null) return resolve(true);
        const tooLong = setTimeout(() => resolve(false), patience);
        down = () => {
          clearTimeout(tooLong);
          resolve(true);
        };
        listener.write('event:ending\ndata:\n\n');
      }),
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
