import type { Page } from 'playwright-core';

/** Looks in a row that have to see the same before the page counts as settled, and the time between them, ms. */
const ALIKE = 3;
const BETWEEN_MS = 150;
const GIVE_UP_MS = 60_000;

/** Waits until nothing is being worked out, nothing moves on its way, and the page stays as it is. */
export async function settled(page: Page): Promise<void> {
  const look = () =>
    page.evaluate(() => ({
      working: document.querySelectorAll('.foot progress').length,
      moving: document
        .getAnimations()
        .filter(each => each.playState === 'running' && each.effect?.getComputedTiming().endTime !== Infinity)
        .length,
      controls: document.querySelectorAll('button, input, select, a, [tabindex]').length,
      text: document.querySelector('#readings')?.textContent,
    }));
  const end = Date.now() + GIVE_UP_MS;
  let before = '';
  for (let alike = 0; alike < ALIKE; ) {
    const now = await look();
    const same = now.working === 0 && now.moving === 0 && JSON.stringify(now) === before;
    alike = same ? alike + 1 : 0;
    before = JSON.stringify(now);
    if (Date.now() > end) throw new Error(`The page did not settle: ${before}`);
    await page.waitForTimeout(BETWEEN_MS);
  }
}
