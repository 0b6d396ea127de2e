import { readGates } from '../../core/course/index.ts';
import { asUsual, type Course, NO_COURSE } from '../state/index.ts';
import giantSlalom from './sets/giant-slalom.csv?raw';
import slalom from './sets/slalom.csv?raw';

/** Invented sets on the invented hill "Pala Ostrelle", each on its slope and at a speed juniors keep on it. */
export const demoSets: Readonly<Record<Course['discipline'], Course>> = {
  SL: {
    ...NO_COURSE,
    name: 'Pala Ostrelle',
    gates: readGates(slalom).gates,
    demo: true,
  },
  GS: {
    ...NO_COURSE,
    ...asUsual(NO_COURSE, 'GS'),
    name: 'Pala Ostrelle',
    gates: readGates(giantSlalom).gates,
    demo: true,
  },
};
