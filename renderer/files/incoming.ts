import type { OpenedFile } from '../host/index.ts';

/** What comes in: a file, or text that was pasted and is in none, which then has no token. */
export type Incoming = Pick<OpenedFile, 'name' | 'text' | 'note'> & { readonly token?: string };
