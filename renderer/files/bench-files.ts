import { type Signal, signal } from '@preact/signals';
import { activePair, changeView, report, t } from '../state/index.ts';

export type FlexSheet = 'stiffness' | 'modes' | 'layup' | 'readings';

/** What lies under the ski on the bench. */
export const flexSheet = signal<FlexSheet>('stiffness');

const texts = new Map<string, Signal<string>>();

/** The readings typed or opened for a pair, kept while the program runs. */
export function readingsOf(id: string): Signal<string> {
  let text = texts.get(id);
  if (!text) {
    text = signal('');
    texts.set(id, text);
  }
  return text;
}

/** Lays bench readings out beside the pair in hand, where they are read and their faults told. */
export function takeReadings(file: { readonly name: string; readonly text: string }): void {
  const active = activePair.value;
  if (!active) {
    report(t('files.readingsWithoutPair', { name: file.name }), 'error');
    return;
  }
  readingsOf(active.id).value = file.text;
  flexSheet.value = 'readings';
  changeView({ question: 'flex' });
  report(t('files.readingsRead', { name: file.name, pair: active.pair.name }));
}
