import type { Key } from './sentence.ts';

/** A language: its texts, and the locale that says how it counts and joins lists. */
export interface Language {
  readonly locale: string;
  readonly texts: Readonly<Record<Key, string>>;
}
