import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, accessibilityFaults, openApp } from './support/app.ts';
import { settled } from './support/settled.ts';

/** As a person would write it from a tape, a caliper and a bench. */
const handWritten = JSON.stringify({
  format: 'turnwright.pair',
  version: 1,
  name: 'Spindle 160',
  discipline: 'SL',
  lengthMm: 1600,
  contactLengthMm: 1400,
  tipWidthMm: 115,
  waistWidthMm: 66,
  tailWidthMm: 101,
  bending: { kind: 'uniform', newtonM2: 260 },
  shopNumber: 'kept on saving',
});

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp();
  page = app.page;
  await page
    .getByRole('heading', { level: 1 })
    .or(page.getByRole('heading', { level: 2 }))
    .first()
    .waitFor();
});
afterAll(() => app?.close());

const edgeSlider = () => page.locator('input[type=range][aria-label="Edge angle"]');

const turnRadius = async (): Promise<number> => {
  const text = await page
    .locator('.pair-readings', { hasText: 'Turn radius' })
    .locator('.figure-value')
    .first()
    .textContent();
  return Number(text);
};

test('a hand-written pair opens, and its sidecut radius is read', async () => {
  await app.chooseFiles([{ name: 'spindle.pair.json', text: handWritten }], () =>
    page.getByRole('button', { name: /^Open/ }).click(),
  );
  await page.getByText('Spindle 160').first().waitFor();
  // L²/(8 d): 1.4² / (8 × 0.021) = 11.67 m.
  const first = page.locator('.pair-readings', { hasText: 'Sidecut radius' });
  await first.getByText('Spindle 160').waitFor();
  await expect.poll(() => first.locator('.figure-value').first().textContent()).toBe('11.67');
});

test('the edge angle by keyboard makes the turn tighter, and the reading says how', async () => {
  await page.keyboard.press('3');
  const edge = edgeSlider();
  await edge.waitFor();
  const field = page.getByRole('textbox', { name: 'Edge angle', exact: true });
  await field.fill('40');
  await field.press('Enter');
  await expect.poll(turnRadius).toBeGreaterThan(8);
  const before = await turnRadius();
  await edge.focus();
  for (let press = 0; press < 20; press++) await edge.press('ArrowRight');
  await expect.poll(() => field.inputValue()).toMatch(/^60/);
  await expect.poll(turnRadius, { timeout: 20_000 }).toBeLessThan(before - 2);
  await page
    .locator('.pair-readings', { hasText: 'Turn radius' })
    .getByRole('button', { name: /how\?/ })
    .first()
    .press('Enter');
  await page.locator('math').first().waitFor();
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
});

test('bad input names the field and leaves the last good state on screen', async () => {
  const before = await turnRadius();
  const field = page.getByRole('textbox', { name: 'Edge angle', exact: true });
  await field.fill('200');
  await page.getByRole('alert').filter({ hasText: 'Edge angle: 200 found' }).waitFor();
  expect(await turnRadius()).toBeCloseTo(before, 5);
  await field.press('Escape');
  await app.chooseFiles(
    [{ name: 'bad.pair.json', text: handWritten.replace('"waistWidthMm":66', '"waistWidthMm":130') }],
    () => page.getByRole('button', { name: /^Open/ }).click(),
  );
  await page
    .getByText(/Waist: 130 is wider than Tip 115/)
    .first()
    .waitFor();
  expect(await turnRadius()).toBeCloseTo(before, 5);
});

test('figures are taken away as a table and a picture', async () => {
  await page.keyboard.press('1');
  const figure = page.locator('figure, section', { hasText: 'Radius along the edge' }).last();
  for (const [choice, start] of [
    ['Table, CSV', /radius/i],
    ['Drawing, SVG', /<svg/],
  ] as const) {
    await figure.locator('summary').click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      figure.getByRole('button', { name: choice }).click(),
    ]);
    expect(await readFile(await download.path(), 'utf8')).toMatch(start);
  }
});

test('saving keeps what this version does not know', async () => {
  await page.keyboard.press('1');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('header').getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  expect(JSON.parse(await readFile(await download.path(), 'utf8'))).toMatchObject({
    name: 'Spindle 160',
    shopNumber: 'kept on saving',
  });
});

test('slalom against giant slalom at one edge angle is two clicks from the start', async () => {
  await page.getByRole('button', { name: /Slalom against giant slalom/ }).click();
  await edgeSlider().waitFor();
  const rows = page.locator('.pair-readings', { hasText: 'Turn radius' }).locator('.figure-value');
  await expect.poll(() => rows.count()).toBe(2);
  const timesAsWide = async () => {
    const [slalom, giant] = (await rows.allTextContents()).map(Number);
    return giant / slalom;
  };
  await expect.poll(timesAsWide, { timeout: 20_000 }).toBeGreaterThan(1.5);
});

test.each(['shape', 'flex', 'edge', 'slope', 'set'])(
  'the %s question has no accessibility faults',
  async name => {
    const key = String(['shape', 'flex', 'edge', 'slope', 'set'].indexOf(name) + 1);
    await page.keyboard.press(key);
    await page.locator('[aria-current="page"]').getByText(name, { exact: false }).waitFor();
    await settled(page);
    expect(await accessibilityFaults(page)).toEqual([]);
  },
);

test('nothing went wrong on the way', () => {
  expect(app.problems).toEqual([]);
});
