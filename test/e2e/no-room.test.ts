import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { demoPairs } from '../../renderer/demo/index.ts';
import { type App, openApp } from './support/app.ts';

let app: App;
let page: Page;
beforeEach(async () => {
  app = await openApp();
  page = app.page;
  await page.locator('.rack-words').first().waitFor();
});
afterEach(() => app.close());

/** Makes the browser's database refuse every write, as one without room does, or take them again. */
const refuse = (full: boolean) =>
  page.evaluate(now => {
    const store = IDBObjectStore.prototype as IDBObjectStore & { own?: IDBObjectStore['put'] };
    store.own ??= store.put;
    store.put = now
      ? () => {
          throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
        }
      : store.own;
  }, full);

const said = () => page.locator('.foot-status').textContent();

test('without room the draft says so, goes on trying, and takes the message back once there is', async () => {
  const waist = page.getByRole('slider', { name: /^Waist width of/ });
  await refuse(true);
  await waist.press('ArrowUp');
  await expect.poll(said).toContain('The quota has been exceeded.');
  await refuse(false);
  await expect.poll(said).not.toContain('quota');
  await page.reload();
  await waist.waitFor();
  await expect.poll(() => waist.getAttribute('aria-valuenow')).toBe('66.5');
});

test('without room a dropped pair opens all the same, and is told not to be among the recent files', async () => {
  await refuse(true);
  await page.evaluate(
    text => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], 'spruce.pair.json'));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    JSON.stringify({ ...demoPairs[0], id: 'spruce', name: 'Spruce 160' }),
  );
  await page.locator('.rack-words', { hasText: 'Spruce 160' }).waitFor();
  await expect.poll(said).toMatch(/spruce\.pair\.json|quota/);
});

test('a page that may start no thread reads a long file all the same', async () => {
  await page.route(/assets\/reading-thread/, route => route.abort());
  const pairs = Array.from({ length: 400 }, (_, at) => ({
    ...demoPairs[at % 8]!,
    id: `s${at}`,
    name: `Ski ${at}`,
  }));
  await page.evaluate(
    text => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], 'club.rack.json'));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    JSON.stringify({ format: 'turnwright.rack', version: 1, owner: '', pairs }),
  );
  await expect.poll(said).toContain('400 pairs opened from club.rack.json');
  expect(await page.locator('.foot .task').count()).toBe(0);
});
