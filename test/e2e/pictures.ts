import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt, projectRoot } from '../../main/tools/index.ts';
import { openApp } from './support/app.ts';
import { ensureBrowser } from './support/browser.ts';
import { settled } from './support/settled.ts';

/** Takes the README's pictures of the app as it is now: `npm run pictures`. */
const folder = join(projectRoot, 'test/e2e/pictures');

ensureBrowser(console.log);
ensureBuilt(console.log);
mkdirSync(folder, { recursive: true });
const app = await openApp({ viewport: { width: 1440, height: 900 } });
const { page } = app;

await page.getByRole('button', { name: /Slalom against giant slalom/ }).click();
await shoot('edge');
await page.locator('body').press('4');
await shoot('slope');
await page.locator('body').press('5');
// The runs are asked for a moment after the gates have come to rest, and take seconds.
await page.locator('.pick-time').waitFor({ timeout: 180_000 });
await shoot('set');
await app.close();

/** Waits until nothing is being solved, so that the picture shows answers and no progress. */
async function shoot(name: string): Promise<void> {
  await settled(page);
  await page.screenshot({ path: join(folder, `${name}.png`) });
  console.log(`test/e2e/pictures/${name}.png`);
}
