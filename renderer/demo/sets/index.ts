import { readGates } from '../../../core/course/index.ts';
import giantSlalom from './giant-slalom.csv?raw';
import slalom from './slalom.csv?raw';

/** The slope each demo set was set on and a speed juniors keep on it. */
export const demoConditions = {
  SL: { slopeDeg: 20, speedKmh: 30 },
  GS: { slopeDeg: 16.5, speedKmh: 50 },
} as const;

/** Invented sets on the invented hill "Pala Ostrelle". */
export const demoSets = {
  SL: {
    name: 'Pala Ostrelle',
    discipline: 'SL',
    gates: readGates(slalom).gates,
    demo: true,
  },
  GS: {
    name: 'Pala Ostrelle',
    discipline: 'GS',
    gates: readGates(giantSlalom).gates,
    demo: true,
  },
} as const;
