import { mkdir, mkdtemp, symlink, writeFile } from 'node:fs/promises';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contentPolicy } from '../../../main/web/content-policy.ts';
import { readPageFile } from '../../../main/web/page-files.ts';
import { type PageServer, servePage } from '../../../main/web/serve.ts';

let root: string;
let server: PageServer;

beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'turnwright-serve-'));
  root = join(folder, 'page');
  await mkdir(root);
  await writeFile(join(folder, 'secret.json'), 'secret');
  await writeFile(join(root, 'index.html'), 'the page');
  await writeFile(join(root, 'note.log'), 'of no known kind');
  await symlink(join(folder, 'secret.json'), join(root, 'linked.json'));
  server = await servePage(root);
});

afterAll(() => server.close());

/** `fetch` would tidy the path and set the host itself, so the request is made by hand. */
function ask(path: string, { host, method = 'GET' }: { host?: string; method?: string } = {}) {
  const { port, host: own } = new URL(server.address);
  return new Promise<{ status: number; body: string; headers: NodeJS.Dict<string | string[]> }>(
    (done, fail) => {
      const options = { port, host: '127.0.0.1', path, method, headers: { host: host ?? own } };
      get(options, response => {
        let body = '';
        response.on('data', chunk => {
          body += chunk;
        });
        response.on('end', () => done({ status: response.statusCode ?? 0, body, headers: response.headers }));
      }).on('error', fail);
    },
  );
}

describe('the local server', () => {
  test('gives the page with the content policy', async () => {
    for (const path of ['/', '/index.html', '/?question=edge']) {
      const { status, body, headers } = await ask(path);
      expect({ status, body }).toEqual({ status: 200, body: 'the page' });
      expect(headers['content-security-policy']).toBe(contentPolicy);
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  test.each([
    '/../secret.json',
    '/%2e%2e/secret.json',
    '/..%2fsecret.json',
    '/..%5csecret.json',
    '/%00/index.html',
    '/linked.json',
    '//etc/passwd',
    '/note.log',
    '/%',
  ])('refuses %s', async path => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toContain('secret');
  });

  test('refuses another host name, and anything but reading', async () => {
    expect((await ask('/', { host: 'elsewhere.test' })).status).toBe(403);
    expect((await ask('/', { host: '127.0.0.1:1' })).status).toBe(403);
    expect((await ask('/', { method: 'POST' })).status).toBe(405);
  });

  test('listens on this machine only', () => {
    expect(new URL(server.address).hostname).toBe('127.0.0.1');
  });
});

test('the policy allows no code from text, no plug-ins and no other origin', () => {
  expect(contentPolicy).toContain("default-src 'none'");
  expect(contentPolicy).toContain("script-src 'self'");
  expect(contentPolicy).not.toMatch(/unsafe|https?:|\*/);
});

test('a page file outside the root is no file', async () => {
  expect(await readPageFile(root, '/index.html')).toMatchObject({ mime: 'text/html; charset=utf-8' });
  expect(await readPageFile(root, '/linked.json')).toBeNull();
});

describe('files handed over at the start', () => {
  const file = { token: 'handed', name: 'larch.pair.json', text: '{"name":"Lärche"}' };

  test('go once, to whoever knows the opening address, and to nobody else', async () => {
    const own = await servePage(root, 0, [{ ok: true, file }]);
    const key = /#open=([\w-]{20,})$/.exec(own.opening)![1]!;
    expect(own.opening.startsWith(own.address)).toBe(true);
    const wrong = await fetch(`${own.address}handed/${key.replace(/.$/, '_')}`);
    expect(wrong.status).toBe(404);
    expect((await fetch(`${own.address}handed/${key}`, { method: 'HEAD' })).status).toBe(404);
    const first = await fetch(`${own.address}handed/${key}`);
    expect(first.headers.get('cache-control')).toBe('no-store');
    expect(await first.json()).toEqual([{ ok: true, file }]);
    expect((await fetch(`${own.address}handed/${key}`)).status).toBe(404);
    await own.close();
  });

  test('with none there are none, however often it is asked', async () => {
    const key = new URL(server.opening).hash.slice('#open='.length);
    for (let time = 0; time < 2; time++) expect((await ask(`/handed/${key}`)).body).toBe('[]');
  });
});

describe('the end', () => {
  test('waits for the window until its work is down, and for none that is not there', async () => {
    const own = await servePage(root);
    const key = new URL(own.opening).hash.slice('#open='.length);
    expect(await own.ending(1)).toBe(true);
    const stream = (await fetch(`${own.address}ending/${key}`)).body!.getReader();
    const text = async () => new TextDecoder().decode((await stream.read()).value);
    expect(await text()).toBe(':\n\n');
    let over = false;
    const ending = own.ending(60_000).then(down => {
      over = true;
      return down;
    });
    expect(await text()).toContain('event:ending');
    expect(over).toBe(false);
    expect((await fetch(`${own.address}down/other`)).status).toBe(404);
    expect(over).toBe(false);
    expect((await fetch(`${own.address}down/${key}`)).status).toBe(204);
    expect(await ending).toBe(true);
    await own.close();
  });

  test('a window that does not answer is not waited for without end', async () => {
    const own = await servePage(root);
    const key = new URL(own.opening).hash.slice('#open='.length);
    const answer = await fetch(`${own.address}ending/${key}`);
    expect(await own.ending(20)).toBe(false);
    await answer.body!.cancel();
    await own.close();
  });
});

test('what is not accepted says what is', async () => {
  const { status, headers } = await ask('/', { method: 'POST' });
  expect(status).toBe(405);
  expect(headers.allow).toBe('GET, HEAD');
});
