import { basename, extname } from 'node:path';
import { app, type BrowserWindow, dialog, type FileFilter, ipcMain } from 'electron';
import { atomicWrite, whyNotWritten } from '../disk/index.ts';
import {
  type ActionName,
  type EventName,
  type EventOf,
  type FileKind,
  kindOf,
  openedExtensions,
  say,
  skisExtensions,
  tableExtensions,
} from '../host/index.ts';
import { answerRequests } from './channel.ts';
import type { Documents } from './documents.ts';
import { isPageAddress } from './page-protocol.ts';

const filters = (): Record<FileKind, FileFilter[]> => ({
  any: [{ name: say({ key: 'host.everything' }), extensions: [...openedExtensions] }],
  skis: [{ name: say({ key: 'host.pairsAndRacks' }), extensions: [...skisExtensions] }],
  table: [{ name: say({ key: 'host.tables' }), extensions: [...tableExtensions] }],
  course: [{ name: say({ key: 'host.gates' }), extensions: [...tableExtensions] }],
});

export interface Shell {
  send(command: ActionName): void;
  /** Opens files handed over by the operating system. */
  receive(paths: readonly string[]): Promise<void>;
}

const MOST_NAMED = 8;

/** The first few by name, the rest by their number: a message taller than the screen helps nobody. */
function unsavedText(all: readonly string[]): string {
  const names = all.slice(0, MOST_NAMED);
  const count = all.length - names.length;
  return count === 0
    ? say({ key: 'host.unsaved', values: { names } })
    : say({ key: 'host.unsavedMore', values: { names, count } });
}

/** Joins one window to the documents: answers its requests, and asks before unsaved work is closed. */
export function joinWindow(window: BrowserWindow, documents: Documents): Shell {
  let unsaved: readonly string[] = [];
  let asking = false;

  const tell = <N extends EventName>(name: N, event: EventOf<N>) => window.webContents.send(name, event);
  const askWhere = async (name: string, filter: FileFilter[]) => {
    const { canceled, filePath } = await dialog.showSaveDialog(window, {
      defaultPath: name,
      filters: filter,
    });
    return canceled || !filePath ? null : filePath;
  };
  const filterFor = (name: string) => {
    const extension = extname(name).slice(1);
    return extension ? [{ name: extension.toUpperCase(), extensions: [extension] }] : [];
  };
  const written = (path: string, content: string | Uint8Array) =>
    atomicWrite(path, content).catch(error => {
      throw new Error(
        say({ key: 'disk.notWrittenWhy', values: { name: basename(path), why: whyNotWritten(error) } }),
      );
    });
  const open = async (path: string, kind?: FileKind) => {
    const file = await documents.open(path, kind);
    if ((kind ?? 'skis') === 'skis') app.addRecentDocument(path);
    return file;
  };

  answerRequests(
    ipcMain,
    event =>
      event.senderFrame !== null &&
      event.senderFrame === window.webContents.mainFrame &&
      isPageAddress(event.senderFrame.url),
    {
      async open({ kind }) {
        const { canceled, filePaths } = await dialog.showOpenDialog(window, {
          properties: ['openFile', 'multiSelections'],
          filters: filters()[kind],
        });
        return canceled
          ? []
          : Promise.all(filePaths.map(path => open(path, kind === 'any' ? kindOf(path) : kind)));
      },
      reopen: ({ token }) => documents.reopen(token),
      recent: () => documents.recent(),
      async save({ token, text }) {
        const dropped = await documents.unconfirmed(token);
        if (dropped) {
          const { response } = await dialog.showMessageBox(window, {
            type: 'question',
            message: say({ key: 'host.saveOver', values: { name: dropped.name } }),
            detail: say({ key: 'host.saveOverDetail', values: dropped }),
            buttons: [say({ key: 'common.save' }), say({ key: 'host.cancel' })],
            defaultId: 0,
            cancelId: 1,
          });
          if (response !== 0) throw new Error(say({ key: 'host.notSaved', values: { name: dropped.name } }));
          await documents.confirm(token);
        }
        return documents.save(token, text);
      },
      saveAs: ({ name, text }) =>
        askWhere(name, filters().skis).then(path => (path ? documents.saveAs(path, text) : null)),
      async exportFile({ name, data }) {
        const path = await askWhere(name, filterFor(name));
        if (path) await written(path, data);
        return path !== null;
      },
      async printPdf({ name }) {
        const path = await askWhere(name, filterFor(name));
        if (!path) return false;
        const pdf = await window.webContents.printToPDF({ printBackground: true, preferCSSPageSize: true });
        await written(path, pdf);
        return true;
      },
      dropped: ({ path }) => documents.openDropped(path),
      unsaved({ names }) {
        unsaved = names;
        window.setDocumentEdited(names.length > 0);
      },
      readyToClose() {
        if (unsaved.length === 0) window.destroy();
      },
      readDraft: () => documents.readDraft(),
      writeDraft: ({ changes }) => documents.writeDraft(changes),
    },
  );

  window.on('close', async event => {
    if (unsaved.length === 0) return;
    event.preventDefault();
    if (asking) return;
    asking = true;
    const choices = [
      say({ key: 'host.saveAll' }),
      say({ key: 'host.closeWithoutSaving' }),
      say({ key: 'host.keepWorking' }),
    ];
    const { response } = await dialog
      .showMessageBox(window, {
        type: 'question',
        message: unsavedText(unsaved),
        buttons: choices,
        defaultId: 0,
        cancelId: 2,
      })
      .finally(() => {
        asking = false;
      });
    if (response === 1) window.destroy();
    if (response === 0) tell('closing', null);
  });

  const loaded = new Promise<void>(resolve => window.webContents.once('did-finish-load', () => resolve()));
  return {
    send: command => tell('command', command),
    async receive(paths) {
      await loaded;
      for (const path of paths) {
        try {
          tell('arrival', { ok: true, file: await open(path, kindOf(path)) });
        } catch (error) {
          tell('arrival', { ok: false, message: error instanceof Error ? error.message : basename(path) });
        }
      }
    },
  };
}
