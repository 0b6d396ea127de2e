import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, Menu, protocol, session } from 'electron';
import { asksForHelp, calc, isCommand } from '../calc/index.ts';
import { isDroppableName } from '../host/index.ts';
import { createDocuments } from './documents.ts';
import { menuTemplate } from './menu.ts';
import { registerPageScheme, servePageScheme } from './page-protocol.ts';
import { joinWindow, type Shell } from './shell.ts';
import { lockSession, openWindow } from './window.ts';

const built = (path: string) => fileURLToPath(new URL(path, import.meta.url));
// Started as `electron .` the first argument is the folder; installed, there is none.
const given = process.argv.slice(app.isPackaged ? 1 : 2);
const filesIn = (argv: readonly string[]) =>
  argv.filter(each => !each.startsWith('-') && isDroppableName(each));

if (isCommand(given[0]) || asksForHelp(given[0])) {
  // The command line needs no window, so it must not need a display either.
  app.commandLine.appendSwitch('ozone-platform', 'headless');
  calc(given).then(code => app.exit(code));
} else if (app.requestSingleInstanceLock()) {
  startShell();
} else {
  app.quit();
}

function startShell(): void {
  let shell: Shell | null = null;
  const early = filesIn(given);
  const receive = (paths: readonly string[]) => {
    if (shell) void shell.receive(paths);
    else early.push(...paths);
  };

  registerPageScheme(protocol);
  app.enableSandbox();
  app.on('open-file', (event, path) => {
    event.preventDefault();
    receive([path]);
  });
  app.on('window-all-closed', () => app.quit());

  // Waiting at the top level instead would keep the module from finishing, and the app from getting ready.
  app.whenReady().then(() => {
    servePageScheme(protocol, built('../renderer'));
    lockSession(session.defaultSession);
    const window = openWindow(built('../preload/preload.cjs'));
    shell = joinWindow(window, createDocuments(app.getPath('userData')));
    const { send } = shell;
    Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(send, process.platform === 'darwin')));
    app.on('second-instance', (_event, argv, folder) => {
      if (window.isMinimized()) window.restore();
      window.focus();
      // Names given there are relative to the folder the second start was made in.
      receive(filesIn(argv).map(path => resolve(folder, path)));
    });
    if (early.length > 0) receive(early);
  });
}
