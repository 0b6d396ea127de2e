import { expect, test } from 'vitest';
import { accessibilityFaults, openApp } from './support/app.ts';

test('without WebGL the hill is a flat plan that plays', async () => {
  const app = await openApp();
  try {
    const { page } = app;
    await page.addInitScript(() => {
      const original = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: []) {
        return kind.startsWith('webgl') ? null : original.call(this, kind as '2d', ...rest);
      } as typeof original;
    });
    await page.reload();
    await page.waitForFunction(() => (document.getElementById('app')?.childElementCount ?? 0) > 0);
    await page.keyboard.press('4');
    await page.getByText(/draws no WebGL 2/).waitFor();
    await page.getByRole('button', { name: 'Play' }).click();
    const time = page.getByRole('slider', { name: 'Time', exact: true });
    await expect.poll(async () => Number(await time.inputValue()), { timeout: 20_000 }).toBeGreaterThan(0.3);
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
