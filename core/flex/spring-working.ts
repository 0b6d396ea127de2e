/** How the spring constants beyond a clamped boot sole come about: as those of beams of the part's mean stiffness. */

import { quadrature } from '../numeric/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import type { Profile } from './profile.ts';

export const VOCABULARY = 'in the manner of ISO 6289:2025 (vocabulary; its fixtures are not claimed)';

/** Pieces a mean stiffness is summed in. */
const PANELS = 60;

/** One input of a working. */
export function input(
  name: string,
  symbol: string,
  value: number,
  unit: string,
  meaning: string,
  from?: string,
): WorkingInput {
  return from === undefined
    ? { name, symbol, value, unit, meaning }
    : { name, symbol, value, unit, meaning, from };
}

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
    title: shovel ? 'Spring constant of the shovel (forebody)' : 'Spring constant of the rear (afterbody)',
    symbol: shovel ? 'c_A' : 'c_B',
    formula: '3 * EI / l^3',
    inputs: [
      input(
        'EI',
        '\\langle EI\\rangle',
        harmonicMean(profile, clamp, tip, x => (x - tip) ** 2),
        'N*m^2',
        'EI(x) over the free part, its harmonic mean weighed by the square of the distance to the contact point',
        'bending',
      ),
      input('l', 'l', free, 'm', 'free length, from the clamped boot sole to the contact point'),
    ],
    result: { value: spring, unit: 'N/m' },
    note: 'Load over deflection at the contact point: ∫(distance)²/EI dx over the free part is the deflection of one newton.',
    source: VOCABULARY,
    status: 'seen',
  };
}

/** The same in torsion. */
export function torsionalSpring(spring: number, torsion: Profile, clamp: number, tip: number): Working {
  return {
    key: 'flex.torsional-spring',
    title: 'Torsional spring constant of the shovel',
    symbol: 'M_T/\\alpha',
    formula: 'GJ / l',
    inputs: [
      input(
        'GJ',
        '\\langle GJ\\rangle',
        harmonicMean(torsion, clamp, tip, () => 1),
        'N*m^2',
        'GJ(x) over the free part, its harmonic mean',
        'torsion',
      ),
      input('l', 'l', tip - clamp, 'm', 'free length, from the clamped boot sole to the contact point'),
    ],
    result: { value: spring, unit: 'N*m/rad' },
    note: 'Torque over twist at the front contact point.',
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
