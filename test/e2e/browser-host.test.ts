import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build, type Rolldown } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Host, OpenedFile } from '../../main/host/index.ts';
import { type App, openApp } from './support/app.ts';

interface Bench {
  host: Host;
  commands: string[];
  arrivals: object[];
}
declare const window: { bench: Bench };

let app: App;

let script: string;

beforeAll(async () => {
  app = await openApp();
  script = await bundleHost();
  await setUp();
});
afterAll(() => app?.close());

/** A host of its own in the page as it stands. */
const setUp = () =>
  app.page.evaluate(`${script}
    const host = browserHost.createBrowserHost();
    window.bench = { host, commands: [], arrivals: [] };
    host.onCommand(command => window.bench.commands.push(command));
    host.onArrival(arrival => window.bench.arrivals.push(arrival));
  `);

async function bundleHost(): Promise<string> {
  const entry = fileURLToPath(new URL('../../renderer/host/browser-host.ts', import.meta.url));
  const outputs = (await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: false, lib: { entry, name: 'browserHost', formats: ['iife'] } },
  })) as Rolldown.RolldownOutput[];
  return outputs[0].output[0].code;
}

test('opens through a file input and saves as a download of the same name', async () => {
  const { page } = app;
  let opening: Promise<OpenedFile[]> = Promise.resolve([]);
  await app.chooseFiles([{ name: 'larch.pair.json', text: '{"one":1}' }], async () => {
    opening = page.evaluate(() => window.bench.host.open('skis'));
  });
  const [file] = await opening;
  expect(file).toMatchObject({ name: 'larch.pair.json', text: '{"one":1}' });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.evaluate(token => window.bench.host.save(token, '{"two":2}'), file.token),
  ]);
  expect(download.suggestedFilename()).toBe('larch.pair.json');
  expect(await readFile(await download.path(), 'utf8')).toBe('{"two":2}');
  const recent = await page.evaluate(() => window.bench.host.recent());
  expect(recent[0]).toEqual({ token: file.token, name: 'larch.pair.json', folder: '' });
  const again = await page.evaluate(token => window.bench.host.reopen(token), file.token);
  expect(again.text).toBe('{"two":2}');
});

test('the draft keeps each record until it is taken away', async () => {
  const { page } = app;
  await page.evaluate(() => window.bench.host.draft.write({ 'pair/a': 'kept', rest: '{}' }));
  expect(await page.evaluate(() => window.bench.host.draft.read())).toEqual({ 'pair/a': 'kept', rest: '{}' });
  await page.evaluate(() => window.bench.host.draft.write({ 'pair/a': null }));
  expect(await page.evaluate(() => window.bench.host.draft.read())).toEqual({ rest: '{}' });
});

test('shortcuts become commands', async () => {
  await app.page.evaluate(() => window.bench.commands.splice(0));
  await app.page.keyboard.press('Control+s');
  await app.page.keyboard.press('Control+Shift+S');
  await app.page.keyboard.press('Control+3');
  await app.page.keyboard.press('s');
  expect(await app.page.evaluate(() => window.bench.commands)).toEqual(['save', 'save-as', 'view-edge']);
});

test('a dropped file arrives', async () => {
  await app.page.evaluate(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File(['{"dropped":1}'], 'rowan.pair.json'));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  });
  await app.page.waitForFunction(() => window.bench.arrivals.length > 0);
  expect(await app.page.evaluate(() => window.bench.arrivals)).toEqual([
    { ok: true, file: expect.objectContaining({ name: 'rowan.pair.json', text: '{"dropped":1}' }) },
  ]);
});

test('a table in an old encoding opens and says so; a pair file in it is refused', async () => {
  const { page } = app;
  const bytes = Buffer.from([0x6e, 0x2c, 0xe9]);
  const choose = async (kind: 'table' | 'skis', name: string) => {
    const [chooser, opened] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.evaluateHandle(request => ({ opening: window.bench.host.open(request).catch(String) }), kind),
    ]);
    await chooser.setFiles([{ name, mimeType: 'text/csv', buffer: bytes }]);
    return opened.evaluate(({ opening }) => opening);
  };
  expect(await choose('table', 'squad.csv')).toEqual([
    expect.objectContaining({ text: 'n,é', note: expect.stringContaining('not UTF-8') }),
  ]);
  expect(await choose('skis', 'ash.pair.json')).toContain('ash.pair.json is not UTF-8 text');
});

test('a file changed by something else is not saved over', async () => {
  const outcome = await app.page.evaluate(async () => {
    // A file handle as browsers with the interface give it.
    let content = 'one';
    const handle = {
      name: 'ash.pair.json',
      isSameEntry: async (other: object) => other === handle,
      getFile: async () => new File([content], 'ash.pair.json'),
      createWritable: async () => ({
        write: async (text: string) => {
          content = text;
        },
        close: async () => {},
      }),
    };
    Object.assign(window, { showOpenFilePicker: async () => [handle] });
    const { host } = window.bench;
    const [file] = await host.open('skis');
    await host.save(file.token, 'two');
    content = 'from elsewhere';
    const refused = await host.save(file.token, 'three').catch((error: Error) => error.message);
    const left = content;
    const [again] = await host.open('skis');
    await host.save(again.token, 'three');
    Object.assign(window, { showOpenFilePicker: undefined });
    return { refused, left, same: again.token === file.token, content };
  });
  expect(outcome).toEqual({
    refused: expect.stringContaining('changed by something else'),
    left: 'from elsewhere',
    same: true,
    content: 'three',
  });
});

test('an export is a download, bytes and all', async () => {
  const [download] = await Promise.all([
    app.page.waitForEvent('download'),
    app.page.evaluate(() =>
      window.bench.host.exportFile('edge.png', 'image/png', new Uint8Array([137, 80, 0, 255])),
    ),
  ]);
  expect([...(await readFile(await download.path()))]).toEqual([137, 80, 0, 255]);
});

test('a large rack that has arrived is among the recent files, however soon the page is reloaded', async () => {
  const { page } = app;
  for (let time = 0; time < 4; time++) {
    const name = `club ${time}.rack.json`;
    await page.evaluate(
      async ([called]) => {
        const { arrivals } = window.bench;
        arrivals.splice(0);
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([JSON.stringify('y'.repeat(8_000_000))], called));
        document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
        while (arrivals.length === 0) await new Promise(requestAnimationFrame);
      },
      [name] as const,
    );
    await page.reload();
    await setUp();
    const recent = await page.evaluate(() => window.bench.host.recent());
    expect(recent.map(file => file.name)).toContain(name);
    const { text } = await page.evaluate(token => window.bench.host.reopen(token), recent[0]!.token);
    expect(text).toHaveLength(8_000_002);
  }
});
