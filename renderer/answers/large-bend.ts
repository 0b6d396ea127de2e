import { activePair, conditions, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { beamOf } from './beam.ts';
import { setupOf } from './bench-setup.ts';

/** The press on the active pair by large-bend theory. */
export const largeBend = answer('largeBend', {
  label: () => t('answers.largeBend'),
  question: () => {
    const active = activePair.value;
    if (!active || !beamOf(active.pair).bending) return null;
    return { id: active.id, ski: active.ski, setup: setupOf(active.ski, conditions.value.benchLoadN) };
  },
});
