import { signal } from '@preact/signals';
import { type BenchTable, DEFAULT_UNCERTAINTY, readBenchTable } from '../../core/flex/index.ts';
import { MM } from '../../core/units/index.ts';
import { activePair, type ChosenPair, readingsOf, t } from '../state/index.ts';
import { answer } from './answer.ts';

/** Standard uncertainty of one deflection, mm. */
export const uncertaintyMm = signal(DEFAULT_UNCERTAINTY / MM);

/** The rows of a pair as readings, or what is wrong with them; null when there are none. */
export function readOf({ id, ski }: ChosenPair): BenchTable | null {
  const text = readingsOf(id).value;
  return text.trim() ? readBenchTable(text, ski.contactLength) : null;
}

/** The profile that explains the readings of the active pair. */
export const identified = answer('identify', {
  label: () => t('flex.findingProfile'),
  question: () => {
    const active = activePair.value;
    const rows = active && readOf(active);
    if (!rows?.ok) return null;
    const { contactLength: length } = active!.ski;
    return { id: active!.id, readings: rows.readings, length, uncertainty: uncertaintyMm.value * MM };
  },
});
