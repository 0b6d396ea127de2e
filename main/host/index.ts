/** The seam between the page and whatever it runs in: what the page may ask, and every message that crosses. */
export {
  ACTIONS,
  type ActionName,
  type ActionRecord,
  commandFor,
  type Menu,
  pageActionFor,
  shortcutOf,
} from './actions.ts';
export { type DecodedText, decodeText, kindOf } from './decode-text.ts';
export { isDroppable, isDroppableName } from './droppable.ts';
export { openedExtensions, skisExtensions, tableExtensions } from './extensions.ts';
export type {
  Arrival,
  DraftChanges,
  DraftRecords,
  FileKind,
  Host,
  OpenedFile,
  RecentFile,
  SavedFile,
  Unsubscribe,
} from './host.ts';
export {
  type Answer,
  type Ask,
  arrival,
  describeProblem,
  type Envelope,
  type EventName,
  type EventOf,
  envelope,
  events,
  MAX_TEXT,
  type RequestName,
  requests,
} from './messages.ts';
export { LANGUAGE, say } from './say.ts';
