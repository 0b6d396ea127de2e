import { type ChildProcess, spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { PlainKey } from '../../core/language/index.ts';
import { type Arrival, say } from '../host/index.ts';
import { findBrowser, openBrowserWindow, type PageServer, readHanded, servePage } from '../web/index.ts';
import { builtPage, ensureBuilt, projectRoot } from './build.ts';
import { fetchElectron, findElectron } from './electron-runtime.ts';

/** A fixed port keeps the page's address, and with it its stored draft and recent files, between starts. */
const USUAL_PORT = 47155;
/** An Electron that ends with an error sooner than this never showed its window. */
const SHOWN_AFTER_MS = 5000;
/** How long the window may take to put its work down when the program is interrupted. */
const PUT_DOWN_MS = 5000;

const print = (line: string) => console.log(line);

/** `npm start`: the program in Electron, else in a browser window, else at an address. */
async function start(): Promise<void> {
  const { values, files } = readArguments();
  ensureBuilt(print);
  const hasDisplay =
    process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);

  if (!values.serve && hasDisplay) {
    const noteFile = join(projectRoot, 'build/electron-not-fetched');
    const electron = findElectron() ?? ((await fetchElectron(noteFile, print)) ? findElectron() : null);
    if (electron && (await runElectron(electron, files))) return;
    print(say({ key: 'start.inBrowser' }));
  }
  const handed = await readHanded(files);
  const { server, usual } = await serve(values.port, handed);
  const browser = values.serve || !hasDisplay ? null : findBrowser();
  if (!browser) {
    print(say({ key: 'start.at', values: { address: server.opening } }));
    tellHanded(handed);
    await interrupted();
    await server.ending(PUT_DOWN_MS);
  } else {
    const window = openBrowserWindow(browser, server.opening, usual);
    tellHanded(handed);
    const over = ended(window);
    await Promise.race([over, interrupted().then(() => endWindow(server, window, over))]);
  }
  await server.close();
}

async function endWindow(server: PageServer, window: ChildProcess, over: Promise<number>): Promise<void> {
  if (!(await server.ending(PUT_DOWN_MS))) {
    print(say({ key: 'start.noAnswer' }));
  }
  window.kill();
  await over;
}

function readArguments() {
  try {
    const { values, positionals } = parseArgs({
      options: { serve: { type: 'boolean' }, port: { type: 'string' } },
      allowPositionals: true,
    });
    const { port } = values;
    if (port !== undefined && (!/^\d+$/.test(port) || Number(port) > 65535)) {
      refusePort(port, say({ key: 'start.ports' }));
    }
    // npm runs a script in the project's folder; names are meant from where npm was called.
    const folder = process.env.INIT_CWD ?? process.cwd();
    return { values, files: positionals.map(file => resolve(folder, file)) };
  } catch (error) {
    const [what] = (error as Error).message.split('. ');
    console.error(say({ key: 'start.accepted', values: { what } }));
    process.exit(2);
  }
}

/** What became of the files named: which the page opens, and that it cannot write back to them. */
function tellHanded(handed: readonly Arrival[]): void {
  for (const each of handed) {
    if (each.ok) print(say({ key: 'start.opens', values: { name: each.file.name } }));
    else console.error(each.message);
  }
}

/** @returns false when Electron ended before it can have shown a window */
async function runElectron(electron: string, files: readonly string[]): Promise<boolean> {
  const sandbox = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(electron, [projectRoot, ...sandbox, ...files], { stdio: 'inherit' });
  const started = Date.now();
  const code = await Promise.race([ended(child), interrupted().then(() => child.kill() && 0)]);
  return code === 0 || Date.now() - started > SHOWN_AFTER_MS;
}

async function serve(
  port: string | undefined,
  handed: readonly Arrival[],
): Promise<{ server: PageServer; usual: boolean }> {
  if (port !== undefined) {
    const number = Number(port);
    const server = await servePage(builtPage, number, handed).catch((error: NodeJS.ErrnoException) =>
      refusePort(port, whyNoPort(error)),
    );
    return { server, usual: number === USUAL_PORT };
  }
  try {
    return { server: await servePage(builtPage, USUAL_PORT, handed), usual: true };
  } catch {
    print(say({ key: 'start.portTaken', values: { port: USUAL_PORT } }));
    return { server: await servePage(builtPage, 0, handed), usual: false };
  }
}

const WHY_NO_PORT: Readonly<Record<string, PlainKey>> = {
  EADDRINUSE: 'start.portInUse',
  EACCES: 'start.portNotAllowed',
};

function whyNoPort({ code = '', message }: NodeJS.ErrnoException): string {
  const key = WHY_NO_PORT[code];
  return key ? say({ key }) : message;
}

function refusePort(port: string, why: string): never {
  console.error(say({ key: 'start.portRefused', values: { port, why } }));
  process.exit(2);
}

function ended(child: ChildProcess): Promise<number> {
  return new Promise(resolve => {
    child.once('error', () => resolve(1));
    child.once('exit', code => resolve(code ?? 1));
  });
}

function interrupted(): Promise<void> {
  return new Promise(resolve => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
    // The terminal was closed.
    process.once('SIGHUP', () => resolve());
  });
}

start().then(
  () => process.exit(0),
  (error: Error) => {
    console.error(error.message);
    process.exit(1);
  },
);
