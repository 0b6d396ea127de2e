import { computed } from '@preact/signals';
import { FieldError, type FieldFault } from '../../core/fault/index.ts';
import {
  faultsSentence,
  type Key,
  type PlainKey,
  type Reader,
  type Sentence,
  say,
  sayAll,
  type ValuesOf,
} from '../../core/language/index.ts';
import { LANGUAGE } from '../../main/host/index.ts';
import { view } from './store.ts';

/** How this person is told things: in the program's language and the chosen units, fields called by their labels. */
const reader = computed<Reader>(() => ({
  language: LANGUAGE,
  units: view.value.system,
  fields: 'by label',
}));

/** A sentence, a label or a field at fault in words. */
export const inWords = (said: Sentence | FieldFault): string => say(said, reader.value);

/** Several sentences one after the other. */
export const allInWords = (sentences: readonly Sentence[]): string => sayAll(sentences, reader.value);

/** The text of a key: `t('run.gripEnds', { speed })`. */
export function t(key: PlainKey): string;
export function t<K extends Exclude<Key, PlainKey>>(key: K, values: ValuesOf<K>): string;
export function t(key: Key, values?: object): string {
  return inWords({ key, values } as Sentence);
}

/** What went wrong: fields at fault in words, else what the error says of itself. */
export function errorWords(error: unknown): string {
  if (error instanceof FieldError) return inWords(faultsSentence([error, ...error.others]));
  return error instanceof Error ? error.message : String(error);
}

/** Fields at fault in one line: the first, and how many more. */
export const faultsInWords = ([first, ...others]: readonly FieldFault[]): string =>
  first ? inWords(faultsSentence([first, ...others])) : '';
