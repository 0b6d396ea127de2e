import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { demoPairs } from '../../renderer/demo/demo-pairs.ts';
import { type App, accessibilityFaults, openApp } from './support/app.ts';

let app: App;
let page: Page;
beforeEach(async () => {
  app = await openApp();
  page = app.page;
  await page.locator('.rack-words').first().waitFor();
});
afterEach(() => app?.close());

const { demo: _invented, ...own } = demoPairs[0]!;
const rack = (...names: string[]) =>
  JSON.stringify({ format: 'turnwright.rack', version: 1, pairs: names.map(name => ({ ...own, name })) });
const names = (of: Page = page) =>
  of.locator('.rack-words').evaluateAll(all => all.map(each => each.textContent?.trim()));
const open = (name: string, text: string) =>
  app.chooseFiles([{ name, text }], () => page.getByRole('button', { name: 'Open…' }).first().click());
const demo = demoPairs.map(pair => pair.name);
const focusedText = () => page.evaluate(() => document.activeElement?.textContent);

test('a second rack file asks about the one that is open, and undo keeps the two apart', async () => {
  await open('juniors.rack.json', rack('Ash', 'Beech'));
  await expect.poll(() => names()).toEqual([...demo, 'Ash', 'Beech']);
  await page.getByRole('button', { name: /^Ash/ }).click();
  await page.keyboard.press('Delete');
  await expect.poll(() => focusedText()).toContain('Beech');
  await open('seniors.rack.json', rack('Cedar'));
  await page.getByRole('dialog').waitFor();
  await expect
    .poll(() => page.getByRole('dialog').textContent())
    .toContain('One rack file is open at a time');
  expect(await accessibilityFaults(page)).toEqual([]);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save juniors.rack.json, then open' }).click(),
  ]);
  const saved = JSON.parse(await readFile(await download.path(), 'utf8'));
  expect(saved.pairs.map((pair: { name: string }) => pair.name)).toEqual(['Beech']);
  await expect.poll(() => names()).toEqual([...demo, 'Cedar']);
  await page.keyboard.press('Control+z');
  await expect.poll(() => names()).toEqual([...demo, 'Beech']);
  await expect.poll(() => page.locator('.rack-save').textContent()).toBe('Save juniors.rack.json');
  expect(app.problems).toEqual([]);
});

test('recent files open by keyboard', async () => {
  await open('juniors.rack.json', rack('Ash'));
  await expect.poll(() => names()).toEqual([...demo, 'Ash']);
  await page.keyboard.press('Control+z');
  await expect.poll(() => names()).toEqual(demo);
  await page.keyboard.press('Control+Shift+O');
  await page.getByRole('dialog', { name: 'Open recent' }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'juniors.rack.json' }).press('Enter');
  await expect.poll(() => names()).toEqual([...demo, 'Ash']);
});

test('the pair form stays open on a field that cannot be used, and says so when closed all the same', async () => {
  await page.getByRole('button', { name: 'New pair', exact: true }).click();
  const form = page.getByRole('dialog');
  await expect
    .poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).value))
    .toBe('New pair');
  const waist = form.getByRole('textbox', { name: 'Waist', exact: true });
  await waist.fill('130');
  await form.getByText('Waist: 130 is wider than Tip 115').waitFor();
  await form.getByRole('button', { name: 'Done' }).click();
  await expect.poll(() => waist.evaluate(field => field === document.activeElement)).toBe(true);
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByText('New pair keeps the last good values: one field could not be used as typed').waitFor();
});

test('work in progress survives a reload, and two windows keep theirs apart', async () => {
  const copy = async (of: Page) => {
    await of.locator('.rack-name').first().click();
    await of.getByRole('button', { name: 'Duplicate' }).click();
  };
  await copy(page);
  // Straight away: the draft is written as the page is left.
  await page.reload();
  await expect.poll(() => names()).toEqual([...demo, `${demo[0]} copy`]);

  const second = await page.context().newPage();
  await second.goto(page.url());
  await expect.poll(() => names(second)).toEqual(demo);
  await copy(second);
  await copy(second);
  await page.close();
  await second.close();

  const back: string[][] = [];
  for (let count = 0; count < 2; count++) {
    const next = await page.context().newPage();
    await next.goto(page.url());
    await expect.poll(async () => (await names(next)).length).toBeGreaterThan(demo.length);
    back.push((await names(next)) as string[]);
  }
  expect(back.map(each => each.length - demo.length).sort()).toEqual([1, 2]);
});

test('rows pasted from a spreadsheet are looked over, imported and undone', async () => {
  await page.getByRole('button', { name: 'Squad rack' }).click();
  const dialog = page.getByRole('dialog', { name: 'Import pasted rows' });
  const paste = () =>
    page.evaluate(() => {
      const clipboardData = new DataTransfer();
      clipboardData.setData(
        'text/plain',
        'owner\tname\tlength (cm)\tcontact length\ttip\twaist\ttail\nZoë\tElm\t165\t1450\t116,5\t66\t104\nZoë\tAsh\tlong\t1450\t116\t66\t104\n',
      );
      document.body.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    });
  // The page takes pasted rows from a moment after it is drawn.
  await expect
    .poll(async () => {
      if ((await dialog.count()) === 0) await paste();
      return dialog.count();
    })
    .toBe(1);
  await expect.poll(() => dialog.textContent()).toContain('Overall length: "long" is not accepted');
  await dialog.getByRole('button', { name: 'Import 1 pair' }).click();
  const pairs = () => page.locator('.squad-words').count();
  await expect.poll(pairs).toBe(demo.length + 1);
  await page.keyboard.press('Control+z');
  await expect.poll(pairs).toBe(demo.length);
});

test('what this version cannot read of the last work is kept, told, saved as a file and dismissed', async () => {
  const records = () => page.evaluate(readDraft);
  const stored = (changes: Record<string, string | null>) => page.evaluate(writeDraft, changes);
  const keptAside = async () => /^\[\{/.test((await records()).unreadable ?? '');
  const first = async () =>
    Object.entries(await records()).find(([, text]) => text.includes(`"name":"${demo[0]}"`))!;

  await expect.poll(async () => (await first())?.[0]).toMatch(/^pair\//);
  const [key, text] = await first();
  await stored({ [key]: text.replace(/"waistWidthMm":\d+/, '"waistWidthMm":999') });
  await page.reload();
  await expect.poll(() => names()).toEqual(demo.slice(1));
  await expect
    .poll(() => page.getByRole('status').textContent())
    .toContain(`${demo[0]} could not be restored`);

  const newer = JSON.stringify({ version: 99, everything: 'elsewhere' });
  await expect.poll(keptAside).toBe(true);
  await page.reload();
  await page.getByRole('button', { name: 'See what is kept…' }).click();
  await expect.poll(() => page.getByRole('dialog').textContent()).toContain('Waist: 999');
  expect(await accessibilityFaults(page)).toEqual([]);
  const [pairFile] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: `Save as a file… ${demo[0]}` }).click(),
  ]);
  expect(JSON.parse(await readFile(await pairFile.path(), 'utf8'))).toMatchObject({
    name: demo[0],
    waistWidthMm: 999,
  });
  await page.getByRole('button', { name: `Dismiss: ${demo[0]}` }).click();
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('button', { name: 'See what is kept…' }).count()).toBe(0);

  // What is in store is written a moment later, and would go over what is put there before.
  await expect.poll(keptAside).toBe(false);
  const others = Object.keys(await records()).map(each => [each, null]);
  await stored({ ...Object.fromEntries(others), whole: newer });
  await page.reload();
  await expect.poll(() => names()).toEqual(demo);
  await page.getByRole('button', { name: 'See what is kept…' }).click();
  const [whole] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file… Your last work in progress' }).click(),
  ]);
  expect(await readFile(await whole.path(), 'utf8')).toBe(newer);
  expect(app.problems).toEqual([]);
});

test('among 300 pairs the one in hand is drawn and in sight, and End is the last', async () => {
  const many = Array.from({ length: 300 }, (_, at) => `Ski ${at + 1}`);
  const inSight = (row: string) =>
    page.evaluate(selector => {
      const at = document.querySelector(selector);
      const box = at?.getBoundingClientRect();
      const frame = at?.closest('.rack-list, .squad-scroll')?.getBoundingClientRect();
      return box && frame ? box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1 : 'not drawn';
    }, row);
  await open('many.rack.json', rack(...many));
  const search = page.locator('#rack-search');
  await search.fill('ski 297');
  await page.getByRole('button', { name: /^Ski 297/ }).click();
  await search.fill('');
  await expect.poll(() => inSight('.rack-row.active')).toBe(true);
  await page.reload();
  await expect.poll(() => inSight('.rack-row.active')).toBe(true);
  await page.getByRole('button', { name: 'Squad rack' }).click();
  await expect.poll(() => inSight('tr.selected')).toBe(true);
  await page.getByRole('button', { name: 'Back', exact: true }).click();

  await search.fill('ski');
  await page.locator('.rack-words').getByText('Ski 1', { exact: true }).click();
  await page.keyboard.press('End');
  const focused = () => page.evaluate(() => document.activeElement?.textContent);
  await expect.poll(focused).toMatch(/^Ski 300/);
  await page.keyboard.press('Home');
  await expect.poll(focused).toMatch(/^A?Ski 1SL/);
  expect(app.problems).toEqual([]);
});

test.each([
  ['snow', 1024],
  ['projector', 1024],
  ['projector', 1280],
])('in the %s look %i wide the rack cuts no name and no command', async (look, width) => {
  await page.setViewportSize({ width, height: 768 });
  await page.evaluate(theme => {
    document.documentElement.dataset.theme = theme;
  }, look);
  const cut = await page.evaluate(() => {
    const rack = document.querySelector('.rack')!.getBoundingClientRect();
    return [...document.querySelectorAll('.rack button, .rack .rack-words, .rack .rack-title')]
      .filter(each => {
        const box = each.getBoundingClientRect();
        return each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0
          ? true
          : box.right > rack.right;
      })
      .map(each => each.textContent);
  });
  expect(cut).toEqual([]);
  const tall = await page
    .locator('.rack-head, .rack-actions')
    .evaluateAll(all => all.map(each => each.getBoundingClientRect().height));
  expect(Math.max(...tall)).toBeLessThan(45);
});

/** Run in the page: the one draft there is, as the database of the browser holds it. */
async function readDraft(): Promise<Record<string, string>> {
  const opening = indexedDB.open('turnwright');
  await new Promise(resolve => opening.addEventListener('success', resolve));
  const store = opening.result.transaction('records').objectStore('records');
  const [keys, texts] = [store.getAllKeys(), store.getAll()];
  await new Promise(resolve => texts.addEventListener('success', resolve));
  opening.result.close();
  return Object.fromEntries(keys.result.map((key, at) => [(key as string[])[1], texts.result[at]]));
}

async function writeDraft(changes: Record<string, string | null>): Promise<void> {
  const opening = indexedDB.open('turnwright');
  await new Promise(resolve => opening.addEventListener('success', resolve));
  const transaction = opening.result.transaction(['records', 'windows'], 'readwrite');
  const windows = transaction.objectStore('windows').getAllKeys();
  await new Promise(resolve => windows.addEventListener('success', resolve));
  const store = transaction.objectStore('records');
  for (const [key, text] of Object.entries(changes)) {
    const place = [windows.result[0] as string, key];
    if (text === null) store.delete(place);
    else store.put(text, place);
  }
  await new Promise(resolve => transaction.addEventListener('complete', resolve));
  opening.result.close();
}
