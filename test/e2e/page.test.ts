import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, accessibilityFaults, openApp } from './support/app.ts';

let app: App;
beforeAll(async () => {
  app = await openApp();
  await app.page.waitForFunction(() => (document.getElementById('app')?.childElementCount ?? 0) > 0);
});
afterAll(() => app?.close());

test('the page opens without an error and loads nothing but its own files', async () => {
  await app.page.waitForLoadState('networkidle');
  expect(app.problems).toEqual([]);
});

test('the first screen has no accessibility faults', async () => {
  expect(await accessibilityFaults(app.page)).toEqual([]);
});
