import { input, type Working } from '../working/index.ts';
import { setRadius } from './rhythmic-set.ts';

const source = { key: 'source.setGeometry' } as const;

/** How R_set came about. Lengths in m. */
export function setRadiusWorking(spacing: number, offset: number): Working {
  return {
    key: 'course.setRadius',
    title: { key: 'course.title.setRadius' },
    symbol: 'R_{set}',
    formula: '(s^2 + o^2)/(4*o)',
    inputs: [
      input('s', 's', 'course.gateDown', spacing, 'm'),
      input('o', 'o', 'course.gateAcross', offset, 'm'),
    ],
    result: { value: setRadius(spacing, offset), unit: 'm' },
    source,
    status: 'derived',
  };
}

/** How the needed edge angle came about; null where the ski's own radius is smaller than the set's. */
export function neededEdgeWorking(spacing: number, offset: number, sidecutRadius: number): Working | null {
  const needed = setRadius(spacing, offset);
  if (needed > sidecutRadius) return null;
  return {
    key: 'course.neededEdge',
    title: { key: 'course.title.neededEdge' },
    symbol: '\\theta',
    formula: 'acos(Rset/Rsc)',
    inputs: [
      input('Rset', 'R_{set}', 'course.setRadius', needed, 'm', 'course.setRadius'),
      input('Rsc', 'R_{sc}', 'course.pairRadius', sidecutRadius, 'm'),
    ],
    result: { value: Math.acos(needed / sidecutRadius), unit: 'rad' },
    note: { key: 'course.note.cosineRule' },
    source,
    status: 'derived',
  };
}
