/** Files a person named: read as text, written whole or not at all, and in plain words why not. */
export { atomicWrite } from './atomic-write.ts';
export { type Journal, openJournal } from './journal.ts';
export { readDocument } from './read-document.ts';
export { whyNotRead, whyNotWritten } from './reason.ts';
