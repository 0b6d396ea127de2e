import { type Signal, signal } from '@preact/signals';

const texts = new Map<string, Signal<string>>();

/** The bench readings typed or opened for a pair, as text, kept while the program runs. */
export function readingsOf(id: string): Signal<string> {
  let text = texts.get(id);
  if (!text) {
    text = signal('');
    texts.set(id, text);
  }
  return text;
}
