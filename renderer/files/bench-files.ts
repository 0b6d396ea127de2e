import { type Signal, signal } from '@preact/signals';
import { activePair, changeView, report } from '../state/index.ts';

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
    report(
      `${file.name} holds bench readings; choose the pair they were taken of, then open it again.`,
      'error',
    );
    return;
  }
  readingsOf(active.id).value = file.text;
  flexSheet.value = 'readings';
  changeView({ question: 'flex' });
  report(`${file.name} read as bench readings of ${active.pair.name}`);
}
