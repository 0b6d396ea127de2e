import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../main/tools/index.ts';
import { demoPairs } from '../../renderer/demo/demo-pairs.ts';
import { launchBrowser } from './support/browser.ts';

function start(...options: string[]) {
  // One process, so that a signal reaches the program itself.
  const child = spawn(process.execPath, ['--import', 'tsx', 'main/tools/start.ts', ...options], {
    cwd: projectRoot,
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', chunk => {
      output += chunk;
    });
  }
  const ended = new Promise<number | null>(resolve => child.once('exit', resolve));
  return { child, ended, output: () => output };
}

test('npm start -- --serve prints an address that answers, and ends when asked to', async () => {
  const { child, ended, output } = start('--serve', '--port', '0');
  await expect.poll(output, { timeout: 60_000 }).toMatch(/http:\/\/127\.0\.0\.1:\d+\//);
  const address = output().match(/http:\S+\//)?.[0] as string;
  const response = await fetch(address);
  expect(response.status).toBe(200);
  expect(await response.text()).toContain('<title>Turnwright</title>');
  expect(response.headers.get('content-security-policy')).toContain("script-src 'self'");
  child.kill('SIGTERM');
  expect(await ended).toBe(0);
  await expect(fetch(address)).rejects.toThrow();
});

test('an unknown option is told, with the accepted ones', async () => {
  const { ended, output } = start('--srve');
  expect(await ended).toBe(2);
  expect(output()).toMatch(/--srve.*accepted are --serve/);
});

test('a file named at the start is opened in the page, once; one that is not there is told', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'turnwright-start-'));
  const file = join(folder, 'spruce.pair.json');
  await writeFile(file, JSON.stringify({ ...demoPairs[0], name: 'Spruce 160' }));
  const { child, ended, output } = start('--serve', '--port', '0', file, join(folder, 'gone.pair.json'));
  await expect.poll(output, { timeout: 60_000 }).toMatch(/gone\.pair\.json could not be found/);
  expect(output()).toContain('It opens spruce.pair.json there; saving it in a browser downloads a copy.');
  const opening = output().match(/http:\S+/)?.[0] as string;
  const browser = await launchBrowser();
  const page = await browser.newPage();
  await page.goto(opening);
  await page.locator('.rack-words', { hasText: 'Spruce 160' }).waitFor();
  expect(page.url()).not.toContain('#');
  await expect
    .poll(() => page.locator('.foot-status').textContent())
    .toContain('gone.pair.json could not be found');
  await page.reload();
  await page.locator('.rack-words', { hasText: 'Spruce 160' }).waitFor();
  expect(await page.locator('.rack-words', { hasText: 'Spruce 160' }).count()).toBe(1);
  await browser.close();
  child.kill('SIGTERM');
  expect(await ended).toBe(0);
});

test('interrupted, it ends only after the window has put its work down', async () => {
  const { child, ended, output } = start('--serve', '--port', '0');
  await expect.poll(output, { timeout: 60_000 }).toMatch(/http:\S+#open=/);
  const browser = await launchBrowser();
  const page = await browser.newPage();
  // The page's own timer never comes round, so that only the interruption can bring the edit down.
  await page.addInitScript(() => {
    const { setTimeout: after } = window;
    const later = (work: () => void, ms: number) => after(work, ms === 300 ? 3_600_000 : ms);
    Object.assign(window, { setTimeout: later });
  });
  const listening = page.waitForResponse(response => response.url().includes('/ending/'));
  await page.goto(output().match(/http:\S+/)?.[0] as string);
  await listening;
  await page.getByRole('slider', { name: /^Waist width of/ }).press('ArrowUp');
  child.kill('SIGINT');
  expect(await ended).toBe(0);
  const kept = await page.evaluate(async () => {
    const opening = indexedDB.open('turnwright');
    await new Promise(resolve => opening.addEventListener('success', resolve));
    const texts = opening.result.transaction('records').objectStore('records').getAll();
    await new Promise(resolve => texts.addEventListener('success', resolve));
    return texts.result.join();
  });
  expect(kept).toContain('"waistWidthMm":66.5');
  await browser.close();
});

test('a port that is taken or is none is refused in one line', async () => {
  const { child, ended: first, output } = start('--serve', '--port', '0');
  await expect.poll(output, { timeout: 60_000 }).toMatch(/http:\S+/);
  const port = new URL(output().match(/http:\S+/)?.[0] as string).port;
  for (const [given, why] of [
    [port, 'another program uses it'],
    ['', 'give 0 to 65535'],
    ['80k', 'give 0 to 65535'],
    ['70000', 'give 0 to 65535'],
  ] as const) {
    const taken = start('--serve', '--port', given);
    expect(await taken.ended).toBe(2);
    expect(taken.output().trim()).toMatch(
      new RegExp(`^--port: "${given}" is not accepted: .*${why}[^\n]*$`, 'm'),
    );
  }
  child.kill('SIGTERM');
  await first;
});

test('with its usual port taken it says that this is a second window with work of its own', async () => {
  const other = createServer();
  // Where a program of somebody else's has it already, all the better.
  await Promise.race([once(other.listen(47155, '127.0.0.1'), 'listening'), once(other, 'error')]);
  const { child, ended, output } = start('--serve');
  await expect.poll(output, { timeout: 60_000 }).toMatch(/Turnwright is at http:\S+/);
  expect(output()).toMatch(/Port 47155 is taken.*second window with work of its own.*save to files/s);
  const address = output().match(/is at (http:\S+\/)/)?.[1] as string;
  expect(new URL(address).port).not.toBe('47155');
  expect((await fetch(address)).status).toBe(200);
  child.kill('SIGTERM');
  expect(await ended).toBe(0);
  other.close();
});
