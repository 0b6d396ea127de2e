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
  for (const sheet of ['Over time', 'From above', 'Why', 'Energy', 'Binding', 'Edge angle']) {
    await app.page.getByRole('radio', { name: sheet, exact: true }).check({ force: true });
    expect(await accessibilityFaults(app.page), sheet).toEqual([]);
  }
});

test('the track is saved as a table', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'Over time', exact: true }).check({ force: true });
  await page.getByLabel('Save "Over time" as a file').press('Enter');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Table, CSV' }).press('Enter'),
  ]);
  expect(download.suggestedFilename()).toBe('over-time.csv');
});

test('a slope that cannot be read is told with file, line and what is accepted; the one before stays', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'CSV', exact: true }).last().press('Space');
  const ask = () => page.getByRole('button', { name: 'Open CSV…' }).press('Enter');
  await app.chooseFiles([{ name: 'slope.csv', text: 'distance,height\n0,0\n10,steep\n' }], ask);
  await page
    .getByText(/slope\.csv\b.*line 3\b.*steep.*accepted is a number/)
    .first()
    .waitFor();
  await page.getByText('no file open').waitFor();
  await app.chooseFiles([{ name: 'good.csv', text: 'distance;height\n0,0;0,0\n60,5;-9,5\n400;-70\n' }], ask);
  await page.getByText('good.csv').first().waitFor();
  await page.getByRole('radio', { name: 'Even', exact: true }).press('Space');
});

const grip = () =>
  app.page
    .locator('.pair-readings', { hasText: 'Least grip to spare' })
    .locator('.figure-value')
    .first()
    .textContent()
    .then(text => Number(text?.replace('−', '-')));

test('the first run carves with grip to spare, and every preset does', async () => {
  const { page } = app;
  const preset = page.getByLabel('Skier and hill');
  expect(await preset.locator('option:checked').textContent()).toBe('Junior slalom');
  await expect.poll(grip).toBeGreaterThan(0);
  await page.getByText('It carves all the way.').waitFor();
  await preset.selectOption('senior-slalom');
  await expect.poll(() => page.getByRole('textbox', { name: 'Start speed' }).inputValue()).toMatch(/^26/);
  await expect.poll(grip, { timeout: 20_000 }).toBeGreaterThan(0);
  await page.getByText('It carves all the way.').waitFor();
  await page.keyboard.press('Control+z');
  await expect.poll(() => preset.locator('option:checked').textContent()).toBe('Junior slalom');
});

test('why: each link of the chain says how, from the balance of that instant', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'Why', exact: true }).check({ force: true });
  await page.getByRole('button', { name: 'Go to weakest grip' }).press('Enter');
  const chain = page.getByRole('region', { name: 'Why: from edge angle to grip' });
  await chain.getByText('What to change').waitFor();
  await chain.getByRole('button', { name: /Lean to balance/ }).press('Enter');
  await page.locator('dialog math').first().waitFor();
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
});

test('the loads handed to the binding carry their caution', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'Binding', exact: true }).check({ force: true });
  await page.getByText('They never set or approve a binding', { exact: false }).waitFor();
  await page.getByRole('slider', { name: 'Presses over time' }).waitFor();
});

test('a rhythm: gates give the quickest turn, its seconds a gate and what holds the skier back', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'Rhythm', exact: true }).press('Space');
  const seconds = () =>
    page
      .locator('.pair-readings', { hasText: 'Seconds a gate' })
      .locator('.figure-value')
      .first()
      .textContent({ timeout: 60_000 })
      .then(Number);
  const first = await seconds();
  expect(first).toBeGreaterThan(0.4);
  expect(first).toBeLessThan(1);
  await page.getByText(/held back most by/).waitFor();
  await page.getByRole('radio', { name: 'From above', exact: true }).check({ force: true });
  await page.getByText(/What holds .* back along the turn/).waitFor();
  expect(await page.locator('.pole').count()).toBe(7);
  expect(await accessibilityFaults(page)).toEqual([]);
  const distance = page.getByRole('textbox', { name: 'Gate distance' });
  await distance.fill('11');
  await distance.press('Enter');
  await expect.poll(seconds, { timeout: 60_000 }).toBeGreaterThan(first + 0.05);
  await page.getByRole('radio', { name: 'Over time', exact: true }).check({ force: true });
  expect(await page.getByLabel('Measured in races').count()).toBe(0);
  await distance.fill('10');
  await distance.press('Enter');
  const slope = page.getByRole('textbox', { name: 'Slope' });
  await slope.fill('19');
  await slope.press('Enter');
  await page.getByLabel('Measured in races').check({ timeout: 60_000 });
  await page.getByText(/Reid et al\./).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
});

test('a run that no balance allows is told with the limit, and nothing is drawn in its place', async () => {
  const { page } = app;
  await page.getByRole('radio', { name: 'Banked', exact: true }).press('Space');
  const speed = page.getByRole('textbox', { name: 'Start speed' });
  await speed.fill('110');
  await speed.press('Enter');
  await page
    .getByRole('alert')
    .filter({ hasText: /There is no such run: .* may help/ })
    .waitFor({ timeout: 60_000 });
  await page.getByText('There is no run to show.').waitFor();
  await page.getByRole('radio', { name: 'Linked', exact: true }).press('Space');
  await page.getByLabel('Skier and hill').selectOption('junior-slalom');
  await page
    .getByRole('alert')
    .filter({ hasText: 'There is no such run' })
    .waitFor({ state: 'detached', timeout: 60_000 });
});

test('a calculation that cannot start is told, and tried again on request', async () => {
  const broken = await openApp({ viewport: { width: 1280, height: 800 } });
  try {
    const { page } = broken;
    await page.addInitScript(() => {
      const Real = window.Worker;
      let failing = true;
      Object.assign(window, {
        mendWorkers: () => {
          failing = false;
        },
        Worker: new Proxy(Real, {
          construct: (target, [url, options]) =>
            new target(failing ? new URL('/assets/no-such-worker.js', location.href) : url, options),
        }),
      });
    });
    await page.reload();
    await page.waitForFunction(() => (document.getElementById('app')?.childElementCount ?? 0) > 0);
    await page.keyboard.press('4');
    await page.getByRole('alert').filter({ hasText: 'could not be worked out' }).waitFor({ timeout: 60_000 });
    // Every view that asks for work says so, and the board.
    const reported = page.getByRole('alert').filter({ hasText: 'The calculation failed to start.' });
    const again = page.getByRole('button', { name: 'Try again' });
    for (const key of ['2', '3', '5', 'F9', 'Escape', '4']) {
      await page.keyboard.press(key);
      await reported.first().waitFor();
      await again.waitFor();
    }
    await page.evaluate(() => (window as unknown as { mendWorkers(): void }).mendWorkers());
    await again.press('Enter');
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('.scrub input')?.disabled === false,
      null,
      { timeout: 60_000 },
    );
    await reported.first().waitFor({ state: 'detached' });
  } finally {
    await broken.close();
  }
});

test('the board says in one sentence whether it carves and what to do, and draws no carve that slides', async () => {
  const { page } = app;
  await page.keyboard.press('F9');
  const verdicts = page.locator('.board-verdicts p');
  await verdicts
    .first()
    .getByText(/Carves: grip ends at/)
    .waitFor();
  const speed = page.getByRole('slider', { name: 'Speed' });
  await speed.focus();
  await speed.press('End');
  await verdicts
    .first()
    .getByText(/Slides: grip ends at .* To carve, slow down/)
    .waitFor();
  await page
    .getByRole('button', { name: /Grip to spare, .* slides\. How\?/ })
    .first()
    .waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByLabel('Skier and hill').selectOption('junior-giant-slalom');
  await verdicts
    .first()
    .getByText(/Carves/)
    .waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('heading', { name: 'What happens down the hill?' }).waitFor();
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
