import { basename, extname } from 'node:path';
import { app, type BrowserWindow, dialog, type FileFilter, ipcMain } from 'electron';
import type { FileKind, MenuCommand } from '../host/host.ts';
import type { EventName, EventOf } from '../host/messages.ts';
import { atomicWrite } from './atomic-write.ts';
import { answerRequests } from './channel.ts';
import type { Documents } from './documents.ts';
import { isPageAddress } from './page-protocol.ts';

const filters: Record<FileKind, FileFilter[]> = {
  skis: [{ name: 'Pairs and racks', extensions: ['json'] }],
  table: [{ name: 'Tables', extensions: ['csv'] }],
  course: [{ name: 'Sets of gates', extensions: ['json', 'csv'] }],
};

export interface Shell {
  send(command: MenuCommand): void;
  /** Opens files handed over by the operating system. */
  receive(paths: readonly string[]): Promise<void>;
}

/** Joins one window to the documents: answers its requests, and asks before unsaved work is closed. */
export function joinWindow(window: BrowserWindow, documents: Documents): Shell {
  let unsaved: readonly string[] = [];
  let closeWhenSaved = false;

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
  const saving = async <T>(work: Promise<T>): Promise<T> => {
    try {
      const done = await work;
      // Thinking better of a save is thinking better of the closing it was for.
      if (done === null) closeWhenSaved = false;
      return done;
    } catch (error) {
      closeWhenSaved = false;
      throw error;
    }
  };
  const open = async (path: string) => {
    const file = await documents.open(path);
    app.addRecentDocument(path);
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
          filters: filters[kind],
        });
        return canceled ? [] : Promise.all(filePaths.map(open));
      },
      reopen: ({ token }) => documents.reopen(token),
      recent: () => documents.recent(),
      save: ({ token, text }) => saving(documents.save(token, text)),
      saveAs: ({ name, text }) =>
        saving(askWhere(name, filters.skis).then(path => (path ? documents.saveAs(path, text) : null))),
      async exportFile({ name, data }) {
        const path = await askWhere(name, filterFor(name));
        if (path) await atomicWrite(path, data);
        return path !== null;
      },
      async printPdf({ name }) {
        const path = await askWhere(name, filterFor(name));
        if (!path) return false;
        const pdf = await window.webContents.printToPDF({ printBackground: true, preferCSSPageSize: true });
        await atomicWrite(path, pdf);
        return true;
      },
      dropped: ({ path }) => open(path),
      unsaved({ names }) {
        unsaved = names;
        window.setDocumentEdited(names.length > 0);
        if (closeWhenSaved && names.length === 0) window.destroy();
      },
      readDraft: () => documents.readDraft(),
      writeDraft: ({ text }) => documents.writeDraft(text),
    },
  );

  window.on('close', async event => {
    if (unsaved.length === 0) return;
    event.preventDefault();
    const choices = ['Save all', 'Close without saving', 'Keep working'];
    const { response } = await dialog.showMessageBox(window, {
      type: 'question',
      message: `Not saved yet: ${unsaved.join(', ')}`,
      buttons: choices,
      defaultId: 0,
      cancelId: 2,
    });
    if (response === 1) window.destroy();
    if (response !== 0) return;
    closeWhenSaved = true;
    tell('command', 'save-all');
  });

  const loaded = new Promise<void>(resolve => window.webContents.once('did-finish-load', () => resolve()));
  return {
    send: command => tell('command', command),
    async receive(paths) {
      await loaded;
      for (const path of paths) {
        try {
          tell('arrival', { ok: true, file: await open(path) });
        } catch (error) {
          tell('arrival', { ok: false, message: error instanceof Error ? error.message : basename(path) });
        }
      }
    },
  };
}
