import type { ActionName } from './actions.ts';
import type {
  Arrival,
  DraftChanges,
  DraftRecords,
  FileKind,
  OpenedFile,
  RecentFile,
  SavedFile,
} from './messages.ts';

export type {
  Arrival,
  DraftChanges,
  DraftRecords,
  FileKind,
  OpenedFile,
  RecentFile,
  SavedFile,
} from './messages.ts';

/** Stops a listener. */
export type Unsubscribe = () => void;

/**
 * All the renderer knows of the outside. Two implementations: Electron's preload and the browser host.
 * Promises reject with an Error whose message can be shown to a person as it stands.
 */
export interface Host {
  readonly kind: 'desktop' | 'browser';
  /** Asks for files; empty when the person thinks better of it. */
  open(kind: FileKind): Promise<OpenedFile[]>;
  /** Most recent first. */
  recent(): Promise<RecentFile[]>;
  reopen(token: string): Promise<OpenedFile>;
  /** Writes to the file the token stands for, keeping what was there beside it as a backup. */
  save(token: string, text: string): Promise<SavedFile>;
  /** Asks where; null when the person thinks better of it. */
  saveAs(name: string, text: string): Promise<SavedFile | null>;
  /** Asks where (desktop) or downloads (browser); false when nothing was written. */
  exportFile(name: string, mime: string, data: string | Uint8Array): Promise<boolean>;
  /** Makes a PDF of the page as its print style shows it; false when nothing was written. */
  printPdf(name: string): Promise<boolean>;
  /** Actions asked for by menu or shortcut, the same stream on both hosts. */
  onCommand(listener: (command: ActionName) => void): Unsubscribe;
  /** Files dropped anywhere on the window or opened from the operating system. */
  onArrival(listener: (arrival: Arrival) => void): Unsubscribe;
  /**
   * The window wants to close and everything is to be saved first. The listener answers whether nothing
   * unsaved is left; only then does the window close.
   */
  onClosing(saveAll: () => Promise<boolean>): Unsubscribe;
  /** Names what would be lost, so that closing the window asks first; an empty list lets it close. */
  setUnsaved(names: readonly string[]): void;
  /**
   * Work in progress, kept outside the files so that a crash or a closed window loses nothing: records by key.
   * A write is kept whole or not at all; null takes a record away.
   */
  readonly draft: {
    read(): Promise<DraftRecords | null>;
    write(changes: DraftChanges): Promise<void>;
    /** Writes as the page goes, when no promise is kept any more. */
    leave(changes: DraftChanges): void;
  };
  /** What the page runs in is about to end: the listener puts down what is not down yet. */
  onEnding(putDown: () => Promise<void>): Unsubscribe;
}
