import { chosenPairs, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { bendable } from './beam.ts';
import { MOST_LOAD_N, rest, setupOf } from './bench-setup.ts';

/** Load against deflection of the chosen pairs on a flat table; nothing while they lie on the bench. */
export const tableCurves = answer('tableCurves', {
  label: () => t('answers.loadCurves'),
  question: () => {
    const skis = bendable(chosenPairs.value).map(({ id, ski }) => ({ id, ski, setup: setupOf(ski, 0) }));
    return rest.value === 'table' && skis.length > 0 ? { skis, most: MOST_LOAD_N } : null;
  },
});
