import { BrowserWindow, type Session } from 'electron';
import { isPageAddress, PAGE_ADDRESS } from './page-protocol.ts';

/** Refuses what the program never needs: permissions, downloads and any address but its own. */
export function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.on('will-download', event => event.preventDefault());
  session.webRequest.onBeforeRequest((details, decide) => {
    const allowed = isPageAddress(details.url) || /^(blob|data|devtools):/.test(details.url);
    decide({ cancel: !allowed });
  });
}

const MOST_RESTARTS = 3;

/** The one window: shown once its page is drawn, with no way out of the page and none in but the preload. */
export function openWindow(preload: string): BrowserWindow {
  const window = new BrowserWindow({
    width: 1360,
    height: 880,
    minWidth: 900,
    minHeight: 600,
    show: false,
    title: 'Turnwright',
    backgroundColor: '#eef2f6',
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
      // The spelling checker would fetch dictionaries.
      spellcheck: false,
    },
  });
  const { webContents } = window;
  webContents.setWindowOpenHandler(() => ({ action: 'deny' }));
  webContents.on('will-navigate', event => event.preventDefault());
  webContents.on('will-redirect', event => event.preventDefault());
  webContents.on('will-attach-webview', event => event.preventDefault());
  // The page brings its draft back; a page that keeps ending is left alone rather than tried for ever.
  let restarts = 0;
  webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit' || restarts >= MOST_RESTARTS) return;
    restarts += 1;
    webContents.reload();
  });
  window.once('ready-to-show', () => window.show());
  void window.loadURL(PAGE_ADDRESS);
  return window;
}
