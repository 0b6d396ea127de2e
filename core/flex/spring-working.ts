/** How the spring constants beyond a clamped boot sole come about: as those of beams of the part's mean stiffness. */

import { quadrature } from '../numeric/index.ts';
import { input, type Working } from '../working/index.ts';
import type { Profile } from './profile.ts';

export const VOCABULARY = { key: 'source.vocabulary' } as const;

/** Pieces a mean stiffness is summed in. */
const PANELS = 60;

/** What a part beyond the sole springs like, as a beam of its mean stiffness would. */
export function clampedSpring(
  part: 'shovel' | 'rear',
  spring: number,
  profile: Profile,
  clamp: number,
  tip: number,
): Working {
  const shovel = part === 'shovel';
  const free = Math.abs(tip - clamp);
  return {
    key: `flex.spring-${part}`,
    title: shovel ? { key: 'flex.title.shovelSpring' } : { key: 'flex.title.rearSpring' },
    symbol: shovel ? 'c_A' : 'c_B',
    formula: '3 * EI / l^3',
    inputs: [
      input(
        'EI',
        '\\langle EI\\rangle',
        'flex.meanBending',
        harmonicMean(profile, clamp, tip, x => (x - tip) ** 2),
        'N*m^2',
        'bending',
      ),
      input('l', 'l', 'flex.freeLength', free, 'm'),
    ],
    result: { value: spring, unit: 'N/m' },
    note: { key: 'flex.note.clampedSpring' },
    source: VOCABULARY,
    status: 'seen',
  };
}

/** The same in torsion. */
export function torsionalSpring(spring: number, torsion: Profile, clamp: number, tip: number): Working {
  return {
    key: 'flex.torsional-spring',
    title: { key: 'flex.title.torsionalSpring' },
    symbol: 'M_T/\\alpha',
    formula: 'GJ / l',
    inputs: [
      input(
        'GJ',
        '\\langle GJ\\rangle',
        'flex.meanTorsion',
        harmonicMean(torsion, clamp, tip, () => 1),
        'N*m^2',
        'torsion',
      ),
      input('l', 'l', 'flex.freeLength', tip - clamp, 'm'),
    ],
    result: { value: spring, unit: 'N*m/rad' },
    note: { key: 'flex.note.torsionalSpring' },
    source: VOCABULARY,
    status: 'seen',
  };
}

/** ∫ weight dx / ∫ weight/stiffness dx between a clamp and the end beyond it. */
function harmonicMean(stiffness: Profile, clamp: number, tip: number, weight: (x: number) => number): number {
  const over = (of: (x: number) => number) =>
    quadrature(of, Math.min(clamp, tip), Math.max(clamp, tip), PANELS);
  return over(weight) / over(x => weight(x) / stiffness(x));
}
