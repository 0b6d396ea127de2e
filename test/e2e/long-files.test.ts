import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { demoPairs } from '../../renderer/demo/index.ts';
import { type App, openApp } from './support/app.ts';

const PAIRS = 6000;

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp();
  page = app.page;
  await page.locator('.rack-words').first().waitFor();
});
afterAll(() => app.close());

function drop(...files: readonly { readonly name: string; readonly text: string }[]): Promise<void> {
  return page.evaluate(given => {
    const dataTransfer = new DataTransfer();
    for (const { name, text } of given) dataTransfer.items.add(new File([text], name));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, files);
}

const said = () => page.locator('.foot .said').textContent();
const racked = () => page.locator('.rack-words').count();

const club = {
  name: 'club.rack.json',
  text: JSON.stringify({
    format: 'turnwright.rack',
    version: 1,
    owner: '',
    pairs: Array.from({ length: PAIRS }, (_, at) => ({
      ...demoPairs[at % 8]!,
      id: `s${at}`,
      name: `Ski ${at}`,
    })),
  }),
};

test('a long file is read in a thread of its own, with a stop; stopped, nothing of it is taken in', async () => {
  const before = await racked();
  const reading = page.waitForEvent('worker', { predicate: worker => worker.url().includes('reading') });
  await drop(club);
  const thread = await reading;
  const task = page.locator('.foot .task', { hasText: 'Reading club.rack.json' });
  await task.locator('progress').waitFor();
  const gone = thread.waitForEvent('close');
  await task.getByRole('button', { name: 'Stop' }).click();
  await gone;
  await expect.poll(said).toContain('club.rack.json was not opened: reading it was stopped');
  expect(await racked()).toBe(before);
  expect(await page.locator('.foot .task').count()).toBe(0);
});

test('read to its end it is opened, and what came behind it follows it', async () => {
  await drop(club, {
    name: 'late.pair.json',
    text: JSON.stringify({ ...demoPairs[0]!, id: 'late', name: 'Latecomer' }),
  });
  await expect.poll(said, { timeout: 60_000 }).toContain('Latecomer');
  const sought = () => page.locator('#rack-search').getAttribute('placeholder');
  await expect.poll(sought, { timeout: 60_000 }).toContain(String(PAIRS + 9));
});

test('what is no file of ours, however long, is told in a line', async () => {
  const gates = 'gate,across,down\n'.padEnd(3_000_000, '1,2,3\n');
  await drop({ name: 'gates.csv', text: gates });
  await expect.poll(said, { timeout: 60_000 }).toContain('gates.csv: no gates found');
  await drop({ name: 'wide.csv', text: `${'name,'.repeat(300_000)}\n` });
  const dialog = page.getByRole('dialog');
  await dialog.waitFor({ timeout: 60_000 });
  expect(await dialog.textContent()).toContain('accepted is at most 1000');
  await page.keyboard.press('Escape');
  expect(app.problems).toEqual([]);
});
