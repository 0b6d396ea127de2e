import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, accessibilityFaults, openApp } from './support/app.ts';

let app: App;
const time = () => app.page.getByRole('slider', { name: 'Time', exact: true });

beforeAll(async () => {
  app = await openApp({ viewport: { width: 1280, height: 800 } });
  await app.page.waitForFunction(() => (document.getElementById('app')?.childElementCount ?? 0) > 0);
  await app.page.keyboard.press('4');
  await time().waitFor();
  await app.page.waitForFunction(
    () => document.querySelector<HTMLInputElement>('.scrub input')?.disabled === false,
  );
});
afterAll(() => app?.close());

test('the hill answers to the keyboard: scrub, play and stop', async () => {
  await time().focus();
  const before = Number(await time().inputValue());
  await app.page.keyboard.press('ArrowRight');
  await expect.poll(async () => Number(await time().inputValue())).toBeCloseTo(before + 0.1, 3);
  await app.page.locator('h1').click();
  await app.page.keyboard.press('Space');
  await app.page.getByRole('button', { name: 'Pause' }).waitFor();
  await app.page.keyboard.press('Space');
  await app.page.getByRole('button', { name: 'Play' }).waitFor();
});

test('sheets under the hill have no accessibility faults', async () => {
  for (const sheet of ['Traces', 'Edge angle', 'Energy', 'Why']) {
    await app.page.getByRole('radio', { name: sheet, exact: true }).check({ force: true });
    expect(await accessibilityFaults(app.page), sheet).toEqual([]);
  }
});

test('the track is saved as a table', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'Traces', exact: true }).check({ force: true });
  await page.getByLabel('Save "Traces" as a file').press('Enter');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Table, CSV' }).press('Enter'),
  ]);
  expect(download.suggestedFilename()).toBe('traces.csv');
});

test('a slope that cannot be read is told with file, line and what is accepted; the one before stays', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'CSV', exact: true }).last().press('Space');
  const ask = () => page.getByRole('button', { name: 'Open CSV…' }).press('Enter');
  await app.chooseFiles([{ name: 'slope.csv', text: 'distance,height\n0,0\n10,steep\n' }], ask);
  await page
    .getByText('slope.csv, line 3: height (m) "steep" found; a number is accepted.')
    .first()
    .waitFor();
  await page.getByText('no file open').waitFor();
  await app.chooseFiles([{ name: 'good.csv', text: 'distance;height\n0,0;0,0\n60,5;-9,5\n400;-70\n' }], ask);
  await page.getByText('good.csv').first().waitFor();
  await page.getByRole('radio', { name: 'Even', exact: true }).press('Space');
});

test('the board hides the answer until a guess lies on the snow, and Escape leaves it', async () => {
  const { page } = app;
  const hidden = () => page.getByText('hidden until the guess').count();
  await page.keyboard.press('F9');
  await page.getByRole('button', { name: 'Guess first' }).press('Enter');
  await expect.poll(hidden).toBe(8);
  await expect.poll(() => page.getByRole('button', { name: 'Show the answer' }).isDisabled()).toBe(true);
  await page.getByRole('slider', { name: 'Guess' }).press('ArrowRight');
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Show the answer' }).press('Enter');
  await page.getByText(/Missed by/).waitFor();
  await expect.poll(hidden).toBe(4);
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Now guess B' }).press('Enter');
  await expect.poll(hidden).toBe(4);
  await page.getByRole('slider', { name: 'Guess' }).press('ArrowRight');
  await page.getByRole('button', { name: 'Show the answer' }).press('Enter');
  await page.getByText(/Missed by/).waitFor();
  await expect.poll(hidden).toBe(0);
  await page.keyboard.press('Escape');
  await page.getByRole('heading', { name: 'What happens down the hill?' }).waitFor();
  expect(app.problems).toEqual([]);
});
