import type { Key, PlainKey, Sentence, ValuesOf } from '../../core/language/index.ts';
import { say } from '../host/index.ts';

/** A sentence as a line of the command line: plain spaces, which other programs can search for. */
export const told = (sentence: Sentence): string => say(sentence).replaceAll('\u00a0', ' ');

/** Several of them, one after the other. */
export const toldAll = (sentences: readonly Sentence[]): string => sentences.map(told).join(' ');

/** The text of a key: `t('calc.noCsv', { command })`. */
export function t(key: PlainKey): string;
export function t<K extends Exclude<Key, PlainKey>>(key: K, values: ValuesOf<K>): string;
export function t(key: Key, values?: object): string {
  return told({ key, values } as Sentence);
}
