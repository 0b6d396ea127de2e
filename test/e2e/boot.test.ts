import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, accessibilityFaults, openApp } from './support/app.ts';

let app: App;

beforeAll(async () => {
  app = await openApp({ viewport: { width: 1280, height: 800 } });
  const { page } = app;
  await page.waitForFunction(() => (document.getElementById('app')?.childElementCount ?? 0) > 0);
  await page.keyboard.press('3');
  await page.getByRole('radio', { name: 'Boot', exact: true }).check({ force: true });
});
afterAll(() => app?.close());

const reading = (label: string) => app.page.locator('.reading', { hasText: label });

test('the boot is asked what it carries, and says how', async () => {
  const { page } = app;
  await reading('Carries nothing at').waitFor();
  await expect.poll(() => reading('Carries nothing at').textContent()).toMatch(/19\.\d°.*now \d+\.\d°/);
  await reading('Moment it carries').press('Enter');
  await page.getByRole('heading', { name: 'Moment on the boot, with the push at the waist' }).waitFor();
  expect(await page.locator('math').count()).toBeGreaterThan(2);
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
});

test('what the ski hands to the binding stands with its caution, without accessibility faults', async () => {
  const handed = app.page.getByRole('region', { name: /hands to the binding/ });
  await handed.waitFor();
  expect(await handed.textContent()).toMatch(/presses.*N·m.*never set or approve a binding/s);
  expect(await accessibilityFaults(app.page)).toEqual([]);
});

test('a plate typed into the form stiffens the ski, and undo takes it off', async () => {
  const { page } = app;
  await page.keyboard.press('2');
  const spring = async () =>
    Number.parseFloat(
      (await page
        .locator('.pair-readings', { hasText: 'Spring at the boot centre' })
        .locator('.figure-value')
        .first()
        .textContent()) ?? '',
    );
  await expect.poll(spring).toBeGreaterThan(1);
  const bare = await spring();
  await page.getByRole('button', { name: 'Edit', exact: true }).first().click();
  await page.getByLabel('Plate from rear contact', { exact: true }).fill('390');
  await page.getByText('Plate length: is missing').waitFor();
  await page.getByLabel('Plate length', { exact: true }).fill('480');
  await page.getByLabel('Plate adds to EI', { exact: true }).fill('150');
  await page.getByRole('button', { name: 'Done' }).click();
  await page.locator('dialog').waitFor({ state: 'detached' });
  await expect.poll(spring).toBeGreaterThan(1.1 * bare);
  await page.getByText('without plate').waitFor();
  await page.keyboard.press('Control+z');
  await expect.poll(spring).toBe(bare);
});

test('nothing went wrong on the way', () => {
  expect(app.problems).toEqual([]);
});
