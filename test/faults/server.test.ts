import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type PageServer, servePage } from '../../main/web/index.ts';
import { runs } from './support/cases.ts';

const SECRET = 'nobody may read this';
const HANDED = 'handed to the opening address alone';

let folder: string;
let server: PageServer;
let port: number;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'turnwright-attacked-'));
  const root = join(folder, 'page');
  await mkdir(join(root, 'assets'), { recursive: true });
  await writeFile(join(root, 'index.html'), 'the page');
  await writeFile(join(root, 'assets', 'page.js'), 'its script');
  for (const name of ['secret.json', 'secret.html', 'page.txt']) await writeFile(join(folder, name), SECRET);
  await symlink(folder, join(root, 'up'));
  await symlink(join(folder, 'secret.json'), join(root, 'assets', 'linked.json'));
  const file = { token: 'handed', name: 'larch.pair.json', text: HANDED };
  server = await servePage(root, 0, [{ ok: true, file }]);
  port = Number(new URL(server.address).port);
});
afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

/**
 * Sends bytes as they are, which no client of HTTP would, and gives all that comes back before the server hangs up;
 * with `hangUp` we do so ourselves once all is sent.
 */
function send(request: string | readonly string[], hangUp = false): Promise<string> {
  return new Promise((done, fail) => {
    let answer = '';
    const socket = connect(port, '127.0.0.1');
    socket.setEncoding('latin1');
    socket.on('data', chunk => {
      answer += chunk;
    });
    socket.on('close', () => done(answer));
    // A server that has heard enough hangs up while we still talk.
    socket.on('error', (error: NodeJS.ErrnoException) =>
      /EPIPE|ECONNRESET/.test(error.code ?? '') ? done(answer) : fail(error),
    );
    for (const part of [request].flat()) socket.write(part, 'latin1');
    if (hangUp) socket.end();
  });
}

const head = (line: string, host = `127.0.0.1:${port}`, more = '') =>
  `${line}\r\nHost: ${host}\r\nConnection: close\r\n${more}\r\n`;
const statusOf = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1] ?? 0);

/** Whatever was asked, nothing of the disk and nothing of the key came back, and the page is still served. */
async function isShut(answer: string): Promise<void> {
  expect(answer).not.toContain(SECRET);
  expect(answer).not.toContain(HANDED);
  expect(answer).not.toContain(folder);
  expect(answer).not.toMatch(/ at .*\.(ts|js):\d+/);
}
const alive = async () => expect(await send(head('GET / HTTP/1.1'))).toContain('the page');

const DOTS = [
  '..',
  '%2e%2e',
  '.%2e',
  '%2e.',
  '%252e%252e',
  '..;',
  '..%00',
  '%c0%ae%c0%ae',
  '%uff0e%uff0e',
  '．．',
  '....',
  '.. ',
  '..%20',
  '%2e%2e%2f%2e%2e',
];
const SLASHES = ['/', '%2f', '%2F', '\\', '%5c', '%255c', '//', '/./', '%c0%af', '%e2%88%95', '/%2e/'];

test('no path leads out of the page', async () => {
  const paths = DOTS.flatMap(dots =>
    SLASHES.flatMap(slash => [
      `/${dots}${slash}secret.json`,
      `/assets${slash}${dots}${slash}${dots}${slash}secret.html`,
    ]),
  );
  const others = [
    ...[
      '/up/secret.json',
      '/up/page.txt',
      '/assets/linked.json',
      '//secret.json',
      '/page/../../secret.json',
      '/etc/passwd',
      '//etc/passwd',
    ],
    ...[
      '/file:///etc/passwd',
      '/C:/secret.json',
      '/C%3a%5csecret.json',
      `/${folder}/secret.json`,
      `${folder}/secret.json`,
      '/index.html/../../secret.json',
    ],
    ...[
      '/index.html%00.json',
      '/%',
      '/%zz',
      '/%ff',
      `/${'a'.repeat(4000)}.json`,
      `/${'../'.repeat(800)}secret.json`,
      '/assets',
      '/assets/',
      '/.',
      '/..',
      '/~',
      '/CON.json',
    ],
    ...[
      'secret.json',
      '*',
      'http://127.0.0.1/../secret.json',
      `http://elsewhere.test/`,
      '/?../secret.json',
      '/#../secret.json',
      '/index.html?x=../../secret.json',
    ],
  ];
  for (const path of [...paths, ...others]) {
    const answer = await send(head(`GET ${path} HTTP/1.1`));
    await isShut(answer);
    const isPage = answer.endsWith('the page');
    expect({ path, status: statusOf(answer), isPage }).toEqual({
      path,
      status: isPage ? 200 : expect.toSatisfy(status => status >= 400 && status < 500),
      isPage,
    });
  }
  await alive();
});

test('only this address is answered, and only reading', async () => {
  const hosts = [
    'elsewhere.test',
    `elsewhere.test:${port}`,
    '127.0.0.1',
    '127.0.0.1:1',
    `127.0.0.1:${port}.elsewhere.test`,
    `127.0.0.1.elsewhere.test:${port}`,
  ];
  hosts.push(
    '',
    ' ',
    `[::1]:${port}`,
    `0.0.0.0:${port}`,
    `127.1:${port}`,
    `LOCALHOST:${port}`,
    `localhost.:${port}`,
    `user@127.0.0.1:${port}`,
    `127.0.0.1:${port}, elsewhere.test`,
    `127.0.0.1:0${port}`,
    '\u00e9',
  );
  for (const host of hosts) {
    const answer = await send(head('GET / HTTP/1.1', host));
    expect({ host, status: statusOf(answer) }).toEqual({
      host,
      status: expect.toSatisfy(status => status >= 400),
    });
    expect(answer).not.toContain('the page');
  }
  expect(
    statusOf(
      await send(
        `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nHost: elsewhere.test\r\nConnection: close\r\n\r\n`,
      ),
    ),
  ).toBe(400);
  expect(statusOf(await send('GET / HTTP/1.1\r\nConnection: close\r\n\r\n'))).toBeGreaterThanOrEqual(400);
  for (const method of [
    'POST',
    'PUT',
    'DELETE',
    'PATCH',
    'OPTIONS',
    'TRACE',
    'PROPFIND',
    'MKCOL',
    'MOVE',
    'LOCK',
  ]) {
    for (const path of ['/', '/index.html', `/handed/${key()}`, `/down/${key()}`, `/ending/${key()}`]) {
      const answer = await send(head(`${method} ${path} HTTP/1.1`));
      expect({ method, path, status: statusOf(answer) }).toEqual({ method, path, status: 405 });
      expect(answer).toMatch(/^allow: GET, HEAD\r$/im);
      await isShut(answer);
    }
  }
  expect(await send(head('HEAD / HTTP/1.1'))).not.toContain('the page');
  await alive();
});

const key = () => /#open=([\w-]+)$/.exec(server.opening)![1]!;

test('the key is not guessed, not cut short and not got by another way', async () => {
  const own = key();
  const near = [
    own.slice(0, -1),
    `${own}x`,
    own.toUpperCase(),
    '',
    '*',
    own.replace(/.$/, '%00'),
    `${own}/`,
    `${own}/..`,
    `${own}%20`,
    `../handed/${own}`,
    encodeURIComponent(own).replaceAll('-', '%2d'),
    'undefined',
    'null',
    '[object Object]',
  ];
  for (const room of ['handed', 'ending', 'down']) {
    for (const each of near) {
      const answer = await send(head(`GET /${room}/${each} HTTP/1.1`));
      expect({ room, each, status: statusOf(answer) }).toEqual({
        room,
        each,
        status: expect.toSatisfy(status => status >= 400 && status < 500),
      });
      await isShut(answer);
    }
  }
  // From a page elsewhere that has its name point here.
  await isShut(await send(head(`GET /handed/${own} HTTP/1.1`, `elsewhere.test:${port}`)));
  const answer = await send(head('GET / HTTP/1.1', undefined, 'Origin: http://elsewhere.test\r\n'));
  expect(answer).not.toMatch(/access-control-allow/i);
  await alive();
});

test('what is too large or no HTTP at all is refused or cut off, and the next is answered', async () => {
  const long = 'x'.repeat(1_000_000);
  const requests: (string | string[])[] = [
    head(`GET /${long} HTTP/1.1`),
    head('GET / HTTP/1.1', undefined, `X-Long: ${long}\r\n`),
    head('GET / HTTP/1.1', undefined, Array.from({ length: 5000 }, (_, at) => `X-${at}: y\r\n`).join('')),
    [
      head('POST / HTTP/1.1', undefined, 'Content-Length: 8000000\r\n'),
      ...Array.from({ length: 8 }, () => long),
    ],
    [head('GET / HTTP/1.1', undefined, 'Content-Length: 1000000\r\n'), long],
    [
      head('POST / HTTP/1.1', undefined, 'Transfer-Encoding: chunked\r\n'),
      `${(1e6).toString(16)}\r\n${long}\r\n0\r\n\r\n`,
    ],
    head('POST / HTTP/1.1', undefined, 'Content-Length: -1\r\n'),
    head('POST / HTTP/1.1', undefined, 'Content-Length: 5\r\nTransfer-Encoding: chunked\r\n'),
    ...[
      'GET\r\n\r\n',
      'GET / HTTP/9.9\r\n\r\n',
      '\0\0\0\0',
      '\r\n'.repeat(1000),
      'hello\r\n\r\n',
      '\x16\x03\x01\x02\x00',
      'GET / HTTP/1.1\nHost: x\n\n',
      `GET / HTTP/1.1\r\nHost 127.0.0.1:${port}\r\n\r\n`,
    ],
  ];
  for (const request of requests) {
    const asksToClose = [request].flat()[0]!.includes('Connection: close');
    const answer = await send(request, !asksToClose);
    await isShut(answer);
    expect(statusOf(answer) === 200 ? answer.endsWith('the page') : true).toBe(true);
  }
  await alive();
});

test('whatever path is asked for, what comes back is the page or a refusal', async () => {
  const part = fc.oneof(
    fc.constantFrom(
      ...DOTS,
      ...SLASHES,
      'secret.json',
      'index.html',
      'assets',
      'up',
      'handed',
      '?',
      '#',
      '%',
      ':',
      'etc/passwd',
    ),
    fc.stringMatching(/^[!-~]{0,6}$/),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(part, { maxLength: 8 }), async parts => {
      const answer = await send(head(`GET /${parts.join('')} HTTP/1.1`));
      await isShut(answer);
      const status = statusOf(answer);
      if (status === 200) expect(answer).toMatch(/the page$|its script$/);
      else if (status < 400 || status >= 500) expect.fail(`${status} for ${parts.join('')}`);
    }),
    // Each case opens a connection.
    runs(0.25),
  );
  // All the while nobody has had the files that were handed over.
  expect(await send(head(`GET /handed/${key()} HTTP/1.1`))).toContain(HANDED);
});
