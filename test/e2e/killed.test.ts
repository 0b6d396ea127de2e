import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { builtPage } from '../../main/tools/index.ts';
import { type PageServer, servePage } from '../../main/web/index.ts';
import { demoPairs } from '../../renderer/demo/index.ts';
import { browserFlags, workingBrowser } from './support/browser.ts';

/** `TURNWRIGHT_KILLS=50 npx vitest run --config test/e2e/vitest.config.ts test/e2e/killed.test.ts` for more. */
const KILLS = Number(process.env.TURNWRIGHT_KILLS ?? 3);
/** Edits lost at most, ms: what is asked of the program. */
const MOST_LOST = 1500;

let server: PageServer;
let profile: string;

beforeAll(async () => {
  server = await servePage(builtPage);
});
afterAll(() => server.close());

interface Window {
  readonly page: Page;
  kill(): Promise<void>;
}

async function openWindow(): Promise<Window> {
  const child: ChildProcess = spawn(
    workingBrowser()!,
    [
      ...browserFlags,
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      server.address,
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const ended = new Promise(resolve => child.once('exit', resolve));
  const address = await new Promise<string>(resolve => {
    let said = '';
    child.stderr!.on('data', chunk => {
      said += chunk;
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found) resolve(found);
    });
  });
  const browser = await chromium.connectOverCDP(address, { timeout: 15_000 }).catch(() => null);
  if (!browser) {
    // Now and then a browser that comes up after a kill does not answer.
    process.kill(-child.pid!, 'SIGKILL');
    await ended;
    return openWindow();
  }
  const [context] = browser.contexts();
  const page = context!.pages().find(each => each.url() === server.address)!;
  return {
    page,
    async kill() {
      // The whole group at once, as a power cut would.
      process.kill(-child.pid!, 'SIGKILL');
      await ended;
      await browser.close().catch(() => {});
    },
  };
}

const waist = (page: Page) => page.getByRole('slider', { name: /^Waist width of/ }).first();
const waistOf = async (page: Page) => Number(await waist(page).getAttribute('aria-valuenow'));

async function openRackOf(page: Page, count: number): Promise<void> {
  const pairs = Array.from({ length: count }, (_, at) => {
    const { id: _id, ...pair } = demoPairs[at % demoPairs.length]!;
    return { ...pair, name: `Ski ${at + 1}` };
  });
  const text = JSON.stringify({ format: 'turnwright.rack', version: 1, owner: '', pairs });
  await page.evaluate(given => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([given], 'club.rack.json'));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, text);
  await page
    .getByRole('button', { name: /^Ski 1\b/ })
    .first()
    .waitFor();
}

test.each([8, 500])('killed while %i pairs are edited, at most 1.5 s of edits are lost', async count => {
  profile = await mkdtemp(join(tmpdir(), 'turnwright-killed-'));
  let window = await openWindow();
  await waist(window.page).waitFor();
  if (count > 8) await openRackOf(window.page, count);
  const lost: number[] = [];
  for (let kill = 0; kill < KILLS; kill++) {
    const { page } = window;
    await waist(page).focus();
    const made: { at: number; value: number }[] = [];
    // Seeded, spread over the pause between two writes.
    const until = Date.now() + 700 + ((kill * 277) % 900);
    while (Date.now() < until) {
      await page.keyboard.press(made.length % 40 < 20 ? 'Shift+ArrowUp' : 'Shift+ArrowDown');
      made.push({ at: Date.now(), value: await waistOf(page) });
    }
    const killed = Date.now();
    await window.kill();
    window = await openWindow();
    await waist(window.page).waitFor();
    await expect.poll(() => window.page.locator('.rack-words').count()).toBeGreaterThanOrEqual(8);
    const back = await waistOf(window.page);
    const kept = made.findLastIndex(({ value }) => value === back);
    // Never a half state: what came back is a value that was once there.
    expect(kept).toBeGreaterThanOrEqual(0);
    lost.push(kept === made.length - 1 ? 0 : killed - made[kept + 1]!.at);
  }
  expect(Math.max(...lost)).toBeLessThanOrEqual(MOST_LOST);
  await window.kill();
  await rm(profile, { recursive: true, force: true });
  // Said for whoever runs many.
  if (KILLS > 3) console.log(`${count} pairs, ${KILLS} kills: at most ${Math.max(...lost)} ms lost`);
});
