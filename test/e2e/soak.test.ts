import { expect, test } from 'vitest';
import { openApp } from './support/app.ts';

/** 15 s in every test run; SOAK_SECONDS=600 for the ten minutes. */
const SECONDS = Number(process.env.SOAK_SECONDS ?? 15);
const MINUTE = 60;
const WARM_UP_MS = 8_000;
/** What compiled code and caches may still take after the warm-up, however long the play; bytes. */
const SLACK = 2_000_000;

test('playing down the hill leaves nothing behind, and a paused hill draws nothing', {
  timeout: SECONDS * 1000 + 120_000,
}, async () => {
  const app = await openApp({ viewport: { width: 1280, height: 800 } });
  try {
    const { page } = app;
    await page.waitForFunction(() => (document.getElementById('app')?.childElementCount ?? 0) > 0);
    await page.keyboard.press('4');
    const play = page.getByRole('button', { name: 'Play', exact: true });
    await expect.poll(() => play.isEnabled(), { timeout: 30_000 }).toBe(true);
    // From the end the button starts the run again, so the hill is played over and over.
    await page.evaluate(() => {
      const again = setInterval(() => {
        const button = document.querySelector<HTMLButtonElement>('.transport .play');
        if (button?.textContent?.includes('Play')) button.click();
      }, 100);
      Object.assign(window, { stopPlaying: () => clearInterval(again) });
    });
    const session = await page.context().newCDPSession(page);
    const used = async () => {
      await session.send('HeapProfiler.collectGarbage');
      const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number };
      return usedSize;
    };
    await page.waitForTimeout(WARM_UP_MS);
    const before = await used();
    const heap = [before];
    for (let left = SECONDS; left > 0; left -= MINUTE) {
      await page.waitForTimeout(1000 * Math.min(left, MINUTE));
      heap.push(await used());
    }
    console.log(`heap in MB, ${SECONDS} s: ${heap.map(bytes => (bytes / 1e6).toFixed(2)).join(', ')}`);
    expect(heap[heap.length - 1]! - before).toBeLessThan(SLACK);

    await page.evaluate(() => (window as unknown as { stopPlaying(): void }).stopPlaying());
    const pause = page.getByRole('button', { name: 'Pause', exact: true });
    if (await pause.count()) await pause.press('Enter');
    await play.waitFor();
    const frames = await page.evaluate(async () => {
      const wait = (ms: number) => new Promise(resolve => setTimeout(resolve, ms));
      await wait(2500);
      let request = 0;
      const original = window.requestAnimationFrame;
      window.requestAnimationFrame = callback => {
        request++;
        return original.call(window, callback);
      };
      await wait(1000);
      window.requestAnimationFrame = original;
      return request;
    });
    expect(frames).toBe(0);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
