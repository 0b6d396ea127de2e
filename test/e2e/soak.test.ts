import { expect, test } from 'vitest';
import { openApp } from './support/app.ts';

/** 15 s in every test run; SOAK_SECONDS=600 for the ten minutes. */
const SECONDS = Number(process.env.SOAK_SECONDS ?? 15);
const MINUTE = 60;
/** Runs played to their end before the memory is first looked at. */
const WARM_UP_RUNS = 2;
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
      const played = { runs: -1 };
      const again = setInterval(() => {
        const button = document.querySelector<HTMLButtonElement>('.transport .play');
        if (!button?.textContent?.includes('Play')) return;
        played.runs += 1;
        button.click();
      }, 100);
      Object.assign(window, { played, stopPlaying: () => clearInterval(again) });
    });
    const session = await page.context().newCDPSession(page);
    const used = async () => {
      await session.send('HeapProfiler.collectGarbage');
      const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number };
      return usedSize;
    };
    const runs = () => page.evaluate(() => (window as unknown as { played: { runs: number } }).played.runs);
    await expect.poll(runs, { timeout: 60_000 }).toBeGreaterThanOrEqual(WARM_UP_RUNS);
    const before = await used();
    const heap = [before];
    for (let left = SECONDS; left > 0; left -= MINUTE) {
      const until = Date.now() + 1000 * Math.min(left, MINUTE);
      await expect.poll(() => Date.now(), { timeout: 2000 * MINUTE, interval: 500 }).toBeGreaterThan(until);
      heap.push(await used());
    }
    console.log(`heap in MB, ${SECONDS} s: ${heap.map(bytes => (bytes / 1e6).toFixed(2)).join(', ')}`);
    expect(heap[heap.length - 1]! - before).toBeLessThan(SLACK);

    await page.evaluate(() => (window as unknown as { stopPlaying(): void }).stopPlaying());
    const pause = page.getByRole('button', { name: 'Pause', exact: true });
    if (await pause.count()) await pause.press('Enter');
    await play.waitFor();
    /** Pictures the page asks for in a second. */
    const frames = () =>
      page.evaluate(async () => {
        let wanted = 0;
        const original = window.requestAnimationFrame;
        window.requestAnimationFrame = callback => {
          wanted += 1;
          return original.call(window, callback);
        };
        await new Promise(resolve => setTimeout(resolve, 1000));
        window.requestAnimationFrame = original;
        return wanted;
      });
    // The finer picture of a hill at rest is drawn first.
    await expect.poll(frames, { timeout: 20_000 }).toBe(0);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
