import { PAIR_FORMAT, PAIR_VERSION, type Pair } from '../../core/pair/index.ts';
import { t } from '../state/index.ts';

/** Where a new pair starts: plausible numbers to be written over, valid from the first moment. */
export const startingPair = (): Pair => ({
  format: PAIR_FORMAT,
  version: PAIR_VERSION,
  name: t('rack.newPair'),
  discipline: 'other',
  lengthMm: 1650,
  contactLengthMm: 1450,
  tipWidthMm: 115,
  waistWidthMm: 68,
  tailWidthMm: 100,
});
