import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import type * as Electron from 'electron';
import type { Page, Request as PageRequest, Route } from 'playwright-core';
import { launchBrowser } from '../../../e2e/support/browser.ts';
import { pageSideElectron } from './page-side.ts';

/**
 * Stands in for the `electron` module, so that the built main and preload run against a real Chromium where
 * Electron's runtime is missing. It cannot cover isolation, the sandbox, native dialogs and menus, single
 * instances or events of the operating system; each part is checked against Electron's own types.
 */
type Part<T, K extends keyof T> = { [k in K]: T[k] };
// biome-ignore lint/suspicious/noExplicitAny: overloads of Electron's listeners only fit one open signature
type AnyListener = (...given: any[]) => any;

/** Chromium opens no page of an unknown scheme, so the page stands at an address that is never looked up. */
const OUTSIDE = 'https://turnwright.test/';
const INSIDE = 'app://turnwright/';
const inside = (address: string) => address.replace(OUTSIDE, INSIDE);

type Handler = (event: Electron.IpcMainInvokeEvent, ...given: unknown[]) => unknown;
const invokeHandlers = new Map<string, Handler>();
let answerPage: ((request: Request) => Response | Promise<Response>) | null = null;
type BeforeRequest = Parameters<Electron.WebRequest['onBeforeRequest']>[0];
let beforeRequest: BeforeRequest = null;

/** What a test sets and reads. */
export const stage = {
  userData: '',
  /** Answers of the dialogs to come, in order. */
  dialogAnswers: [] as object[],
  dialogsShown: [] as object[],
  menu: [] as Electron.MenuItemConstructorOptions[],
  windows: [] as BrowserWindow[],
  /** Paths of the files dropped, by name. */
  dropped: {} as Record<string, string>,
  refused: [] as string[],
  exitCode: null as number | null,
};

class AppEvents extends EventEmitter {
  override on(name: string, listener: AnyListener): this {
    return super.on(name, listener);
  }
}
const appEvents = new AppEvents();

export const app = {
  isPackaged: false,
  on: (name: string, listener: AnyListener) => appEvents.on(name, listener) as never,
  whenReady: async () => {},
  quit: () => {
    appEvents.emit('quit');
  },
  exit: code => {
    stage.exitCode = code ?? 0;
  },
  enableSandbox: () => {},
  requestSingleInstanceLock: () => true,
  getPath: () => stage.userData,
  addRecentDocument: () => {},
  commandLine: { appendSwitch: () => {} } as unknown as Electron.CommandLine,
} satisfies Part<
  Electron.App,
  | 'isPackaged'
  | 'on'
  | 'whenReady'
  | 'quit'
  | 'exit'
  | 'enableSandbox'
  | 'requestSingleInstanceLock'
  | 'getPath'
  | 'addRecentDocument'
  | 'commandLine'
>;
export const emitApp = (name: string, ...given: unknown[]) => appEvents.emit(name, ...given);

export const ipcMain = {
  handle: (channel: string, handler: AnyListener) => {
    invokeHandlers.set(channel, handler);
  },
} satisfies Part<Electron.IpcMain, 'handle'>;

async function nextAnswer<T>(...given: unknown[]): Promise<T> {
  stage.dialogsShown.push(given.at(-1) as object);
  const answer = stage.dialogAnswers.shift();
  if (!answer) throw new Error('A dialog was shown that the test did not expect');
  return answer as T;
}

export const dialog = {
  showOpenDialog: nextAnswer<Electron.OpenDialogReturnValue>,
  showSaveDialog: nextAnswer<Electron.SaveDialogReturnValue>,
  showMessageBox: nextAnswer<Electron.MessageBoxReturnValue>,
} satisfies Part<Electron.Dialog, 'showOpenDialog' | 'showSaveDialog' | 'showMessageBox'>;

export const Menu = {
  buildFromTemplate: (template: Electron.MenuItemConstructorOptions[]) => {
    stage.menu = template;
    return {} as Electron.Menu;
  },
  setApplicationMenu: () => {},
};

export const protocol = {
  registerSchemesAsPrivileged: () => {},
  handle: (_scheme, handler) => {
    answerPage = handler as typeof answerPage;
  },
} satisfies Part<Electron.Protocol, 'registerSchemesAsPrivileged' | 'handle'>;

export const session = {
  defaultSession: {
    setPermissionRequestHandler: () => {},
    setPermissionCheckHandler: () => {},
    on: (() => {}) as AnyListener,
    webRequest: {
      onBeforeRequest: ((listener: BeforeRequest) => {
        beforeRequest = listener;
      }) as Electron.WebRequest['onBeforeRequest'],
    } as Electron.WebRequest,
  } as Part<
    Electron.Session,
    'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'on' | 'webRequest'
  >,
};

class WebContents extends EventEmitter {
  page: Page | null = null;
  openHandler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0] | null = null;
  readonly mainFrame = { url: '' } as Electron.WebFrameMain;
  setWindowOpenHandler(handler: NonNullable<typeof this.openHandler>) {
    this.openHandler = handler;
  }
  send(channel: string, event: unknown) {
    void this.page?.evaluate(
      ([name, given]) => (window as never as { electronEmit: AnyListener }).electronEmit(name, given),
      [channel, event] as const,
    );
  }
  reload() {
    void this.page?.reload();
  }
  async printToPDF(): Promise<Buffer> {
    return Buffer.from(await (this.page as Page).pdf());
  }
}

export class BrowserWindow extends EventEmitter {
  readonly webContents = new WebContents();
  destroyed = false;
  edited = false;
  /** Resolves once the page has loaded. */
  readonly opened: Promise<Page>;
  #start: (page: Promise<Page>) => void = () => {};

  constructor(readonly options: Electron.BrowserWindowConstructorOptions) {
    super();
    this.opened = new Promise(resolve => {
      this.#start = resolve;
    });
    stage.windows.push(this);
  }
  show() {}
  focus() {}
  restore() {}
  isMinimized = () => false;
  setDocumentEdited(edited: boolean) {
    this.edited = edited;
  }
  close() {
    let isPrevented = false;
    const preventDefault = () => {
      isPrevented = true;
    };
    this.emit('close', { preventDefault });
    if (!isPrevented) this.destroy();
  }
  destroy() {
    this.destroyed = true;
    appEvents.emit('window-all-closed');
  }
  async loadURL(address: string): Promise<void> {
    this.#start(this.#open(address));
    await this.opened;
  }

  async #open(address: string): Promise<Page> {
    const context = await (await launchBrowser()).newContext();
    await context.exposeBinding('electronInvoke', async ({ frame }, channel: string, given: unknown) => {
      const isMain = frame === this.webContents.page?.mainFrame();
      Object.assign(this.webContents.mainFrame, { url: inside(frame.url()) });
      const senderFrame = isMain ? this.webContents.mainFrame : { url: inside(frame.url()) };
      return invokeHandlers.get(channel)?.({ senderFrame } as Electron.IpcMainInvokeEvent, given);
    });
    const preload = readFileSync(this.options.webPreferences?.preload as string, 'utf8');
    await context.addInitScript(pageSideElectron(preload, stage.dropped));
    await context.route('**/*', answerRoute);
    const page = await context.newPage();
    this.webContents.page = page;
    await page.goto(address.replace(INSIDE, OUTSIDE));
    this.emit('ready-to-show');
    this.webContents.emit('did-finish-load');
    return page;
  }
}

async function answerRoute(route: Route, request: PageRequest): Promise<void> {
  const url = inside(request.url());
  const isCancelled = await new Promise<boolean>(resolve => {
    if (!beforeRequest) return resolve(false);
    beforeRequest({ url } as Electron.OnBeforeRequestListenerDetails, ({ cancel }) =>
      resolve(cancel === true),
    );
  });
  if (isCancelled || !answerPage) {
    stage.refused.push(url);
    return route.abort();
  }
  const response = await answerPage(new Request(url));
  const body = Buffer.from(await response.arrayBuffer());
  await route.fulfill({ status: response.status, headers: Object.fromEntries(response.headers), body });
}

export async function closeStage(): Promise<void> {
  for (const { webContents } of stage.windows) await webContents.page?.context().browser()?.close();
}
