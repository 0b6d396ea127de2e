// @module-tag slow
import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { Host } from '../../../main/host/index.ts';
import { builtMain, ensureBuilt } from '../../../main/tools/index.ts';
import { type BrowserWindow, closeStage, emitApp, stage } from './stand-in/electron.ts';

vi.mock('electron', () => import('./stand-in/electron.ts'));

type HostWindow = { turnwrightHost: Host; electronInvoke(name: string, ask: unknown): Promise<unknown> };
declare const window: HostWindow;

let folder: string;
let page: Page;
let shown: BrowserWindow;

beforeAll(async () => {
  ensureBuilt(() => {});
  folder = await mkdtemp(join(tmpdir(), 'turnwright-shell-'));
  stage.userData = join(folder, 'own');
  stage.dropped['dropped.pair.json'] = join(folder, 'dropped.pair.json');
  process.argv = ['electron', '.'];
  await import(/* @vite-ignore */ builtMain);
  await vi.waitFor(() => expect(stage.windows).toHaveLength(1));
  shown = stage.windows[0];
  page = await shown.opened;
});

afterAll(closeStage);

async function openFile(name: string, text: string) {
  const path = join(folder, name);
  await writeFile(path, text);
  stage.dialogAnswers.push({ canceled: false, filePaths: [path] });
  const [file] = await page.evaluate(() => window.turnwrightHost.open('skis'));
  return { path, file };
}

test('the window is isolated, sandboxed and opens no other', () => {
  expect(shown.options.webPreferences).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    webviewTag: false,
  });
  expect(shown.webContents.openHandler?.({} as never)).toEqual({ action: 'deny' });
  const navigation = { preventDefault: vi.fn() };
  shown.webContents.emit('will-navigate', navigation);
  expect(navigation.preventDefault).toHaveBeenCalled();
});

test('the page loads under its content policy and nothing from elsewhere', async () => {
  expect(page.url()).toBe('https://turnwright.test/');
  expect(await page.title()).toBe('Turnwright');
  const outcome = await page.evaluate(async () => {
    try {
      await fetch('https://elsewhere.test/');
      return 'loaded';
    } catch {
      return 'refused';
    }
  });
  expect(outcome).toBe('refused');
  // A timer's text is evaluated by the page itself, unlike the test's own calls.
  const evaluated = await page.evaluate(
    () =>
      new Promise(resolve =>
        setTimeout(() => {
          try {
            resolve(new Function('return "evaluated"')());
          } catch {
            resolve('refused');
          }
        }),
      ),
  );
  expect(evaluated).toBe('refused');
});

test('open, edit, save: the file holds the edit and the backup what was there', async () => {
  const { path, file } = await openFile('larch.pair.json', '{"before":1}');
  expect(file).toMatchObject({ name: 'larch.pair.json', text: '{"before":1}' });
  expect(JSON.stringify(file)).not.toContain(folder);
  const saved = await page.evaluate(token => window.turnwrightHost.save(token, '{"after":2}'), file.token);
  expect(saved).toEqual({ token: file.token, name: 'larch.pair.json' });
  expect(await readFile(path, 'utf8')).toBe('{"after":2}');
  expect(await readFile(`${path}.bak`, 'utf8')).toBe('{"before":1}');
  const recent = await page.evaluate(() => window.turnwrightHost.recent());
  expect(recent[0]).toEqual({ token: file.token, name: 'larch.pair.json', folder });
  const again = await page.evaluate(token => window.turnwrightHost.reopen(token), file.token);
  expect(again.text).toBe('{"after":2}');
});

test('save as asks where, and says null when cancelled', async () => {
  const path = join(folder, 'rowan.pair.json');
  stage.dialogAnswers.push({ canceled: false, filePath: path }, { canceled: true, filePath: '' });
  const saved = await page.evaluate(() => window.turnwrightHost.saveAs('rowan.pair.json', '{}'));
  expect(saved?.name).toBe('rowan.pair.json');
  expect(await readFile(path, 'utf8')).toBe('{}');
  expect(await page.evaluate(() => window.turnwrightHost.saveAs('rowan.pair.json', '{}'))).toBeNull();
});

test('exports bytes and a PDF whole', async () => {
  const picture = join(folder, 'edge.png');
  const sheet = join(folder, 'sheet.pdf');
  stage.dialogAnswers.push({ canceled: false, filePath: picture }, { canceled: false, filePath: sheet });
  await page.evaluate(() =>
    window.turnwrightHost.exportFile('edge.png', 'image/png', new Uint8Array([137, 80, 0, 255])),
  );
  expect([...(await readFile(picture))]).toEqual([137, 80, 0, 255]);
  expect(await page.evaluate(() => window.turnwrightHost.printPdf('sheet.pdf'))).toBe(true);
  expect((await readFile(sheet)).subarray(0, 5).toString()).toBe('%PDF-');
});

test('the draft survives, record by record', async () => {
  await page.evaluate(() => window.turnwrightHost.draft.write({ mine: '{"work":"in progress"}', old: '' }));
  await page.evaluate(() => window.turnwrightHost.draft.write({ old: null }));
  expect(await page.evaluate(() => window.turnwrightHost.draft.read())).toMatchObject({
    mine: '{"work":"in progress"}',
  });
  expect(await page.evaluate(() => window.turnwrightHost.draft.read())).not.toHaveProperty('old');
});

test('messages that do not parse are refused with the field named', async () => {
  const answer = await page.evaluate(() => window.electronInvoke('save', { token: 7, text: '' }));
  expect(answer).toMatchObject({ ok: false, message: expect.stringContaining('save.token') });
  const named = page.evaluate(() => window.turnwrightHost.saveAs('../outside.json', '{}'));
  await expect(named).rejects.toThrow(/saveAs.name/);
});

test('a frame that is not the page itself is refused', async () => {
  const answer = await page.evaluate(async () => {
    const frame = document.createElement('iframe');
    document.body.append(frame);
    const inner = frame.contentWindow as unknown as HostWindow;
    return inner.electronInvoke('recent', undefined);
  });
  expect(answer).toMatchObject({ ok: false, message: expect.stringContaining('refused') });
});

test('menu entries reach the page as commands', async () => {
  await page.evaluate(() => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    window.turnwrightHost.onCommand(command => seen.push(command));
  });
  const file = stage.menu.find(({ label }) => label === 'File');
  const entries = file?.submenu as { id?: string; click?: () => void }[];
  entries.find(({ id }) => id === 'save')?.click?.();
  await vi.waitFor(async () =>
    expect(await page.evaluate(() => (window as never as { seen: string[] }).seen)).toEqual(['save']),
  );
});

test('files from the operating system and dropped ones arrive, missing ones say so', async () => {
  await writeFile(join(folder, 'alder.pair.json'), '{"alder":1}');
  await writeFile(join(folder, 'dropped.pair.json'), '{"format":"turnwright.pair","dropped":1}');
  await page.evaluate(() => {
    const arrivals: unknown[] = [];
    Object.assign(window, { arrivals });
    window.turnwrightHost.onArrival(arrival => arrivals.push(arrival));
  });
  emitApp('second-instance', {}, ['turnwright', join(folder, 'alder.pair.json')], '/');
  emitApp('open-file', { preventDefault() {} }, join(folder, 'nowhere.pair.json'));
  await page.evaluate(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File(['{}'], 'dropped.pair.json'));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  });
  await vi.waitFor(async () => {
    const arrivals = await page.evaluate(() => (window as never as { arrivals: object[] }).arrivals);
    expect(arrivals).toHaveLength(3);
    expect(arrivals).toContainEqual({ ok: true, file: expect.objectContaining({ text: '{"alder":1}' }) });
    expect(arrivals).toContainEqual({
      ok: true,
      file: expect.objectContaining({ name: 'dropped.pair.json' }),
    });
    expect(arrivals).toContainEqual({ ok: false, message: expect.stringContaining('nowhere.pair.json') });
  });
});

test('a dropped file is written to only once the person has said so', async () => {
  const path = join(folder, 'kept.pair.json');
  const text = '{"format":"turnwright.pair"}';
  await writeFile(path, text);
  const opened = await page.evaluate(
    given => window.electronInvoke('dropped', { path: given }) as Promise<{ value: { token: string } }>,
    path,
  );
  const save = (content: string) =>
    page.evaluate(({ token, content }) => window.turnwrightHost.save(token, content), {
      token: opened.value.token,
      content,
    });
  stage.dialogAnswers.push({ response: 1 });
  await expect(save('{"no":1}')).rejects.toThrow('kept.pair.json is not saved.');
  expect(await readFile(path, 'utf8')).toBe(text);
  stage.dialogAnswers.push({ response: 0 });
  await save('{"yes":1}');
  // Asked once.
  await save('{"yes":2}');
  expect(await readFile(path, 'utf8')).toBe('{"yes":2}');
});

test('a path that no drop can bring is refused, whatever the page asks', async () => {
  await writeFile(join(folder, 'settings.json'), '{"password":"secret"}');
  for (const path of ['/etc/passwd', '/proc/self/environ', join(folder, 'settings.json'), folder]) {
    const answer = await page.evaluate(given => window.electronInvoke('dropped', { path: given }), path);
    expect(answer).toMatchObject({ ok: false });
    expect(JSON.stringify(answer)).not.toMatch(/secret|root:/);
  }
});

test('a second start hands its file over, named from the folder it was made in', async () => {
  await writeFile(join(folder, 'larch.pair.json'), '{"relative":1}');
  emitApp('second-instance', {}, ['turnwright', 'larch.pair.json'], folder);
  await vi.waitFor(async () =>
    expect(
      await page.evaluate(() => (window as never as { arrivals: object[] }).arrivals.at(-1)),
    ).toMatchObject({ ok: true, file: { text: '{"relative":1}' } }),
  );
});

test('a page that ended unexpectedly is loaded again, but not for ever', () => {
  const reload = vi.spyOn(shown.webContents, 'reload').mockImplementation(() => {});
  shown.webContents.emit('render-process-gone', {}, { reason: 'clean-exit' });
  expect(reload).not.toHaveBeenCalled();
  for (let times = 0; times < 10; times++) {
    shown.webContents.emit('render-process-gone', {}, { reason: 'crashed' });
  }
  expect(reload).toHaveBeenCalledTimes(3);
});

test('closing asks while something is unsaved, and closes only when the page says it is saved', async () => {
  await page.evaluate(() => {
    window.turnwrightHost.setUnsaved(['Larch 155']);
    const request: string[] = [];
    Object.assign(window, { request, nextAnswer: false });
    const state = window as never as { nextAnswer: boolean };
    window.turnwrightHost.onClosing(async () => {
      request.push('save all');
      if (state.nextAnswer) window.turnwrightHost.setUnsaved([]);
      return state.nextAnswer;
    });
  });
  const request = () => page.evaluate(() => (window as never as { request: string[] }).request.length);
  await vi.waitFor(() => expect(shown.edited).toBe(true));
  stage.dialogAnswers.push({ response: 2 });
  shown.close();
  // Pressing twice asks once.
  shown.close();
  await vi.waitFor(() => expect(stage.dialogAnswers).toHaveLength(0));
  expect(shown.destroyed).toBe(false);
  expect(stage.dialogsShown.at(-1)).toMatchObject({ message: expect.stringContaining('Larch 155') });

  // A save that fails, or is thought better of, leaves the window open; so does saving by hand later.
  await new Promise(resolve => setTimeout(resolve));
  stage.dialogAnswers.push({ response: 0 });
  shown.close();
  await vi.waitFor(async () => expect(await request()).toBe(1));
  await page.evaluate(() => window.turnwrightHost.setUnsaved([]));
  await vi.waitFor(() => expect(shown.edited).toBe(false));
  expect(shown.destroyed).toBe(false);

  await page.evaluate(() => {
    window.turnwrightHost.setUnsaved(['Larch 155']);
    Object.assign(window, { nextAnswer: true });
  });
  await vi.waitFor(() => expect(shown.edited).toBe(true));
  stage.dialogAnswers.push({ response: 0 });
  shown.close();
  await vi.waitFor(() => expect(shown.destroyed).toBe(true));
  expect(await request()).toBe(2);
});
