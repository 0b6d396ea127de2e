import { type Sentence, say } from '../../core/language/index.ts';

/** A sentence as a line of the command line: plain spaces, which other programs can search for. */
export const told = (sentence: Sentence): string => say(sentence).replaceAll('\u00a0', ' ');

/** Several of them, one after the other. */
export const toldAll = (sentences: readonly Sentence[]): string => sentences.map(told).join(' ');
