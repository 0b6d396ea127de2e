import { type Sentence, say } from '../../core/language/index.ts';

/** A sentence as a line of the command line: plain spaces, which other programs can search for. */
export const inWords = (sentence: Sentence): string => say(sentence).replaceAll('\u00a0', ' ');

/** Several of them, one after the other. */
export const allInWords = (sentences: readonly Sentence[]): string => sentences.map(inWords).join(' ');
