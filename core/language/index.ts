/**
 * Every sentence and label a person reads, by key, in each language. Core returns data: a `Sentence` names its key and
 * its values; `say` puts it into words with the reader's units. Sentences are in `english.ts`; another language is
 * another such file.
 */
export { acceptedSentence, faultsSentence } from './fault-words.ts';
export type { Language } from './language.ts';
export { languages } from './languages.ts';
export { type Reader, say, sayAll } from './say.ts';
export type { FieldName, Key, PlainKey, Quantity, Sentence, Value, ValuesOf } from './sentence.ts';
