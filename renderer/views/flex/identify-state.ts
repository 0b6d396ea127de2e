import { type Signal, signal } from '@preact/signals';
import { DEFAULT_UNCERTAINTY } from '../../../core/flex/index.ts';

/** Standard uncertainty of one deflection, mm. */
export const uncertaintyMm = signal(DEFAULT_UNCERTAINTY * 1e3);

const texts = new Map<string, Signal<string>>();

/** The readings typed or opened for a pair, kept while the program runs. */
export function rowsOf(id: string): Signal<string> {
  let text = texts.get(id);
  if (!text) {
    text = signal('');
    texts.set(id, text);
  }
  return text;
}
