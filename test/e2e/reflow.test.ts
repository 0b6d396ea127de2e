import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { type App, openApp } from './support/app.ts';
import { settled } from './support/settled.ts';

/** A telephone's width, and a window of 1280 × 800 magnified to 200 % (WCAG 2.2, 1.4.10 and 1.4.4). */
const WINDOWS = {
  '320 px': { viewport: { width: 320, height: 568 } },
  '200 %': { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 },
} as const;
const QUESTIONS = ['Shape', 'Flex', 'Edge', 'Slope', 'Set'] as const;

let app: App;
afterEach(() => app.close());

/** What cannot be got at by scrolling down alone: wider than the window, and in nothing that scrolls by itself. */
const outOfReach = (page: Page) =>
  page.evaluate(() => {
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      (/auto|scroll/.test(getComputedStyle(element).overflowX) && element !== document.body
        ? true
        : scrolls(element.parentElement));
    const lost: string[] = [];
    if (document.scrollingElement!.scrollWidth > innerWidth)
      lost.push(`page ${document.scrollingElement!.scrollWidth} px wide`);
    for (const each of document.querySelectorAll(
      'button, input, select, textarea, summary, h1, h2, h3, p, a',
    )) {
      const { left, right, width, height } = each.getBoundingClientRect();
      const hidden = width <= 1 || height <= 1 || !each.checkVisibility();
      if (hidden || each.closest('svg, .sr-only') || scrolls(each)) continue;
      if (left < -1 || right > innerWidth + 1)
        lost.push(`${each.tagName} "${each.textContent?.slice(0, 30)}" ${left}–${right}`);
    }
    return lost;
  });

/** Text that one control lays over another: both would have to be read. */
const covered = (page: Page) =>
  page.evaluate(() => {
    // What lies under an open dialog is not meant to be reached.
    const over = document.querySelector('dialog[open]') ?? document;
    const shown = [...over.querySelectorAll('button, input, select, summary')].filter(
      each =>
        each.checkVisibility() && !each.closest('svg, .figure-box') && each.getBoundingClientRect().width > 1,
    );
    const lost: string[] = [];
    for (const each of shown) {
      each.scrollIntoView({ block: 'center', inline: 'nearest' });
      const { left, top, width, height } = each.getBoundingClientRect();
      const at = document.elementFromPoint(left + width / 2, top + height / 2);
      const own = at && (each.contains(at) || at.contains(each) || at.closest('label')?.contains(each));
      if (!own)
        lost.push(
          `${each.tagName} "${each.textContent || each.getAttribute('aria-label')}" under ${at?.tagName}.${at?.className}`,
        );
    }
    scrollTo(0, 0);
    return lost;
  });

test.each(Object.keys(WINDOWS) as (keyof typeof WINDOWS)[])(
  'at %s everything is reached by scrolling down, in every question and on every page',
  async window => {
    app = await openApp(WINDOWS[window]);
    const { page } = app;
    await page.locator('.rack-words').first().waitFor();
    const found: Record<string, string[]> = {};
    const look = async (where: string) => {
      await settled(page);
      const lost = [...(await outOfReach(page)), ...(await covered(page))];
      if (lost.length > 0) found[where] = lost;
    };
    for (const question of QUESTIONS) {
      await page.locator('#rail').getByRole('button', { name: question }).click();
      await look(question);
    }
    await page.getByRole('button', { name: 'Squad rack' }).click();
    await look('Squad');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Help' }).click();
    await look('Help');
    await page.keyboard.press('Escape');
    await page.locator('#board-button').click();
    await page.locator('.board').waitFor();
    await look('Board');
    expect(found).toEqual({});
    expect(app.problems).toEqual([]);
  },
  240_000,
);

test('with a person’s own colours a slider keeps its track', async () => {
  app = await openApp({ forcedColors: 'active' });
  const { page } = app;
  await page.locator('#rail').getByRole('button', { name: 'Edge' }).click();
  const slider = page.locator('.edge-controls input[type=range]').first();
  await slider.waitFor();
  const picture = [...(await slider.screenshot())];
  const colours = await page.evaluate(async bytes => {
    const image = await createImageBitmap(new Blob([Uint8Array.from(bytes)]));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    canvas.drawImage(image, 0, 0);
    const at = (x: number, y: number) => [...canvas.getImageData(x, y, 1, 1).data.slice(0, 3)].join();
    const middle = Math.floor(image.height / 2);
    return { filled: at(2, middle), rest: at(image.width - 3, middle), ground: at(2, 1) };
  }, picture);
  expect(new Set(Object.values(colours)).size).toBe(3);
});
