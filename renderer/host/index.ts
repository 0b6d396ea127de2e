import type { Host } from '../../main/host/index.ts';
import { createBrowserHost } from './browser-host.ts';

export type {
  ActionName,
  ActionRecord,
  Arrival,
  DraftRecords,
  FileKind,
  Host,
  OpenedFile,
  RecentFile,
  SavedFile,
  Unsubscribe,
} from '../../main/host/index.ts';
export { ACTIONS, pageActionFor } from '../../main/host/index.ts';

declare global {
  interface Window {
    /** Put there by the preload when the page runs inside Electron. */
    readonly turnwrightHost?: Host;
  }
}

let host: Host | null = null;

/** The one host of this page. */
export function getHost(): Host {
  host ??= window.turnwrightHost ?? createBrowserHost();
  return host;
}
