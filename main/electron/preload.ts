import { contextBridge, ipcRenderer, webUtils } from 'electron';
import {
  type Answer,
  type Arrival,
  type Ask,
  describeProblem,
  type EventName,
  type EventOf,
  envelope,
  events,
  type Host,
  type RequestName,
  requests,
} from '../host/index.ts';

async function ask<N extends RequestName>(name: N, question: Ask<N>): Promise<Answer<N>> {
  const sealed = envelope.parse(await ipcRenderer.invoke(name, question));
  if (!sealed.ok) throw new Error(sealed.message);
  const answer = requests[name].answer.safeParse(sealed.value);
  if (!answer.success) throw new Error(describeProblem(name, answer.error));
  return answer.data as Answer<N>;
}

/** Listeners of one event; what comes before the first listener waits for it. */
function stream<N extends EventName>(name: N) {
  const listeners = new Set<(event: EventOf<N>) => void>();
  const waiting: EventOf<N>[] = [];
  const push = (event: EventOf<N>) => {
    if (listeners.size === 0) waiting.push(event);
    for (const listener of listeners) listener(event);
  };
  ipcRenderer.on(name, (_, given: unknown) => push(events[name].parse(given) as EventOf<N>));
  return {
    push,
    subscribe(listener: (event: EventOf<N>) => void) {
      listeners.add(listener);
      for (const event of waiting.splice(0)) listener(event);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

const commands = stream('command');
const arrivals = stream('arrival');
const closings = stream('closing');

window.addEventListener('dragover', event => event.preventDefault());
window.addEventListener('drop', event => {
  event.preventDefault();
  for (const file of event.dataTransfer?.files ?? []) {
    ask('dropped', { path: webUtils.getPathForFile(file) }).then(
      opened => arrivals.push({ ok: true, file: opened }),
      (error: Error) => arrivals.push({ ok: false, message: error.message } satisfies Arrival),
    );
  }
});

const host: Host = {
  kind: 'desktop',
  open: kind => ask('open', { kind }),
  recent: () => ask('recent', undefined),
  reopen: token => ask('reopen', { token }),
  save: (token, text) => ask('save', { token, text }),
  saveAs: (name, text) => ask('saveAs', { name, text }),
  exportFile: (name, mime, data) => ask('exportFile', { name, mime, data }),
  printPdf: name => ask('printPdf', { name }),
  onCommand: commands.subscribe,
  onArrival: arrivals.subscribe,
  onClosing: saveAll =>
    closings.subscribe(async () => {
      if (await saveAll()) await ask('readyToClose', undefined);
    }),
  setUnsaved: names => {
    void ask('unsaved', { names: [...names] });
  },
  draft: {
    read: () => ask('readDraft', undefined),
    write: changes => ask('writeDraft', { changes }),
    leave: changes => void ask('writeDraft', { changes }),
  },
  // A window of the shell closes only after it has asked.
  onEnding: () => () => {},
};

contextBridge.exposeInMainWorld('turnwrightHost', host);
