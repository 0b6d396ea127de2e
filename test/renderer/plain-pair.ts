import type { Pair } from '../../core/pair/index.ts';

/** A pair of which only the name and the waist matter. */
export const plainPair = (name: string, waistWidthMm = 66): Pair => ({
  format: 'turnwright.pair',
  version: 1,
  name,
  lengthMm: 1650,
  contactLengthMm: 1450,
  tipWidthMm: 115,
  waistWidthMm,
  tailWidthMm: 100,
});
