import { signal } from '@preact/signals';
import { readBenchTable } from '../../core/flex/index.ts';
import { CONTACT_LENGTH_MM } from '../../core/pair/index.ts';
import { MM } from '../../core/units/index.ts';
import { activePair, changeView, readingsOf, report, t } from '../state/index.ts';

export type FlexSheet = 'stiffness' | 'modes' | 'layup' | 'readings';

/** What lies under the ski on the bench. */
export const flexSheet = signal<FlexSheet>('stiffness');

/** Lays bench readings out beside the pair in hand, where they are read and their faults told. */
export function takeReadings(file: { readonly name: string; readonly text: string }): void {
  const active = activePair.value;
  if (!active) {
    report(t('files.readingsWithoutPair', { name: file.name }), 'error');
    return;
  }
  const read = readBenchTable(file.text, CONTACT_LENGTH_MM.to * MM);
  // Single cells at fault are mended beside the bench; a file of anything else is not laid out there.
  if (!read.ok && (read.fault.field === 'file' || read.fault.field === 'readings')) {
    report(t('files.atFault', { name: file.name, fault: read.fault }), 'error');
    return;
  }
  readingsOf(active.id).value = file.text;
  flexSheet.value = 'readings';
  changeView({ question: 'flex' });
  report(t('files.readingsRead', { name: file.name, pair: active.pair.name }));
}
