import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type App, openApp } from './support/app.ts';

let app: App;
let page: Page;
beforeEach(async () => {
  app = await openApp();
  page = app.page;
  await page.locator('.rack-words').first().waitFor();
});
afterEach(() => app.close());

const loseContext = (within: string) =>
  page.locator(`${within} canvas`).evaluate((canvas: HTMLCanvasElement) => {
    canvas.dataset.lost = 'yes';
    canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext();
  });

test.each([
  ['Edge', '.scene', '.scene-note'],
  ['Slope', '.hill', '.plan-note'],
])(
  '%s: a picture that the driver gives up is drawn flat, and comes back by itself',
  async (question, box, note) => {
    await page.locator('#rail').getByRole('button', { name: question }).click();
    await page.locator(`${box} canvas`).waitFor();
    // Seen in the page itself, since the picture may be back before anybody looks from outside.
    await page.evaluate(selector => {
      Object.assign(window, { seen: '' });
      new MutationObserver(() => {
        const said = document.querySelector(selector)?.textContent;
        if (said) Object.assign(window, { seen: said });
      }).observe(document.body, { subtree: true, childList: true });
    }, note);
    await loseContext(box);
    await page.locator(`${box} canvas:not([data-lost])`).waitFor();
    expect(await page.evaluate(() => (window as unknown as { seen: string }).seen)).toContain(
      'The graphics driver gave up the picture',
    );
    await expect.poll(() => page.locator(note).count()).toBe(0);
    expect(app.problems).toEqual([]);
  },
);

test('the server gone before a view was first opened: a sentence, and a second try that works', async () => {
  let gone = true;
  await page.route(/assets\/scene-/, route => (gone ? route.abort('connectionrefused') : route.continue()));
  await page.locator('#rail').getByRole('button', { name: 'Edge' }).click();
  const note = page.locator('.scene-note');
  await note.waitFor();
  expect(await note.textContent()).toContain('The server of this page does not answer');
  await note.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => note.textContent()).toContain('The server of this page does not answer');
  gone = false;
  await note.getByRole('button', { name: 'Try again' }).click();
  await page.locator('.scene canvas').waitFor();
  expect(await note.count()).toBe(0);
});
