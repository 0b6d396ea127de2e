/**
 * Builds the preview page and takes its pictures:
 *   npx tsx test/renderer/scene/preview/shoot.ts OUT_DIR [WIDTHxHEIGHT] name=query …
 * Without names a fixed round of edge and hill pictures in every theme is taken.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';

const [out = 'build/scene-preview', ...rest] = process.argv.slice(2);
const size = /^(\d+)x(\d+)$/.exec(rest[0] ?? '');
if (size) rest.shift();
const width = Number(size?.[1] ?? 1280);
const height = Number(size?.[2] ?? 800);
const round = [
  'edge-snow=kind=edge',
  'edge-night=kind=edge&theme=night',
  'edge-projector=kind=edge&theme=projector&camera=hill&two',
  'edge-two=kind=edge&two&camera=arc&guess',
  'hill-snow=kind=hill&two',
  'hill-night=kind=hill&theme=night&camera=side',
  'hill-whole=kind=hill&two&camera=whole&t=0.9',
];
const pictures = rest.length > 0 ? rest : round;

const site = join(out, 'site');
mkdirSync(out, { recursive: true });
await build({
  configFile: false,
  root: new URL('.', import.meta.url).pathname,
  logLevel: 'warn',
  build: { outDir: join(process.cwd(), site), emptyOutDir: true, minify: false },
});
const types: Record<string, string> = { '.html': 'text/html', '.js': 'text/javascript' };
const server = createServer((request, response) => {
  const path = new URL(request.url ?? '/', 'http://x').pathname;
  const file = path === '/' ? 'index.html' : path.slice(1);
  try {
    const body = readFileSync(join(site, file));
    response.writeHead(200, { 'content-type': types[extname(file)] ?? 'application/octet-stream' }).end(body);
  } catch {
    response.writeHead(404).end();
  }
});
await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
const address = server.address();
const port = typeof address === 'object' && address ? address.port : 0;
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--use-gl=angle',
    '--use-angle=gl-egl',
    '--ignore-gpu-blocklist',
  ],
});
const page = await browser.newPage({ viewport: { width, height } });
page.on('console', message => {
  if (message.type() === 'error' || message.type() === 'warning') console.log(message.text());
});
page.on('pageerror', error => console.log(error));
for (const picture of pictures) {
  const cut = picture.indexOf('=');
  await page.goto(`http://127.0.0.1:${port}/?${picture.slice(cut + 1)}`);
  await page.waitForFunction(() => window.scene?.stats().frames > 1);
  await page.screenshot({ path: join(out, `${picture.slice(0, cut)}.png`) });
  const drawn = await page.evaluate(() => window.scene.stats().frames);
  await page.waitForTimeout(400);
  const still = (await page.evaluate(() => window.scene.stats().frames)) === drawn;
  if (!still) console.log(picture.slice(0, cut), 'goes on drawing while nothing moves');
  console.log(picture.slice(0, cut), JSON.stringify(await page.evaluate(() => window.scene.stats())));
}
await browser.close();
server.close();
