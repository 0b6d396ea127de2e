import { readGates } from '../../../core/course/index.ts';
import giantSlalom from './giant-slalom.csv?raw';
import slalom from './slalom.csv?raw';

/** Invented sets on the invented hill "Pala Ostrelle", and the slopes in degrees they were set on. */
export const demoSlopes = { SL: 20, GS: 16.5 } as const;

export const demoSets = {
  SL: {
    name: 'Pala Ostrelle, slalom',
    discipline: 'SL',
    gates: readGates(slalom).gates,
    demo: true,
  },
  GS: {
    name: 'Pala Ostrelle, giant slalom',
    discipline: 'GS',
    gates: readGates(giantSlalom).gates,
    demo: true,
  },
} as const;
