import type { Working } from '../working/index.ts';
import { setRadius } from './rhythmic-set.ts';

const source =
  'plane geometry of two equal arcs from gate to gate; the edge angle by the cosine rule R = R_sc cosθ';

/** How R_set came about. Lengths in m. */
export function setRadiusWorking(spacing: number, offset: number): Working {
  return {
    key: 'course.setRadius',
    title: 'Radius that fills the set',
    symbol: 'R_{set}',
    formula: '(s^2 + o^2)/(4*o)',
    inputs: [
      { name: 's', symbol: 's', meaning: 'gate to gate down the hill', value: spacing, unit: 'm' },
      { name: 'o', symbol: 'o', meaning: 'gate to gate across the hill', value: offset, unit: 'm' },
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
    title: 'Edge angle the set asks for',
    symbol: '\\theta',
    formula: 'acos(Rset/Rsc)',
    inputs: [
      {
        name: 'Rset',
        symbol: 'R_{set}',
        meaning: 'radius that fills the set',
        value: needed,
        unit: 'm',
        from: 'course.setRadius',
      },
      {
        name: 'Rsc',
        symbol: 'R_{sc}',
        meaning: 'sidecut radius of the pair',
        value: sidecutRadius,
        unit: 'm',
      },
    ],
    result: { value: Math.acos(needed / sidecutRadius), unit: 'rad' },
    note: 'By the cosine rule: rigid snow, the ski pressed to it along its whole edge.',
    source,
    status: 'derived',
  };
}
