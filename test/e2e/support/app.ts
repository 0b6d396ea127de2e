import axe from 'axe-core';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { builtPage } from '../../../main/tools/index.ts';
import { servePage } from '../../../main/web/index.ts';
import { launchBrowser } from './browser.ts';

export interface App {
  readonly page: Page;
  /** Console errors, uncaught errors, failed or foreign requests since the start; should stay empty. */
  readonly problems: string[];
  /** Answers the next file chooser. */
  chooseFiles(files: { name: string; text: string }[], ask: () => Promise<unknown>): Promise<void>;
  close(): Promise<void>;
}

/** The built page, served as `npm start` serves it, in a headless browser of its own. */
export async function openApp(options: BrowserContextOptions = {}): Promise<App> {
  const server = await servePage(builtPage);
  const browser = await launchBrowser();
  const context = await browser.newContext({ viewport: { width: 1360, height: 880 }, ...options });
  // Native file choosers cannot be driven; without these the page uses a file input and downloads.
  await context.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
  });
  const page = await context.newPage();
  const problems: string[] = [];
  page.on('console', message => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  page.on('pageerror', error => problems.push(`uncaught: ${error.message}`));
  page.on('requestfailed', request => {
    // A page that reloads drops what it was still loading; that is nobody's fault.
    const reason = request.failure()?.errorText;
    if (reason !== 'net::ERR_ABORTED') problems.push(`failed: ${request.url()} (${reason})`);
  });
  page.on('request', request => {
    const { protocol } = new URL(request.url());
    const isOwn = request.url().startsWith(server.address) || protocol === 'blob:' || protocol === 'data:';
    if (!isOwn) problems.push(`foreign: ${request.url()}`);
  });
  await page.goto(server.address);
  return {
    page,
    problems,
    async chooseFiles(files, ask) {
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), ask()]);
      await chooser.setFiles(
        files.map(({ name, text }) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) })),
      );
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** Accessibility faults of the page as it stands, one line each; an empty list is the aim. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  // The content policy blocks a script element, so the checker is evaluated in the page instead.
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help} (${nodes.map(node => node.target).join('; ')})`,
  );
}
