/** Changes a skier, a technician or a day can make, and what each is worth on a solved line. */

import { DEGREE, KMH, KPA } from '../units/index.ts';
import type { SkiChange, SkiWorth } from './ski-changes.ts';
import type { Worth } from './worth.ts';

/** Seconds per SI unit of each input; of a whole set also of the speed at the start. */
export type Inputs = Worth & { readonly startSpeed?: number };

export interface ChangeWorth {
  readonly input: keyof Inputs | SkiChange;
  readonly change: number;
  readonly unit: string;
  /** What the change brings; negative is quicker. */
  readonly seconds: number;
}

/** Each in the unit told, and that unit in SI. */
const CHANGES: readonly (readonly [input: keyof Inputs, change: number, unit: string, si: number])[] = [
  ['startSpeed', 1, 'km/h', KMH],
  ['clearance', -0.05, 'm', 1],
  ['legSpeed', 0.1, 'm/s', 1],
  ['pushMost', 0.2, 'body weights', 1],
  ['pushRate', 1, 'body weights/s', 1],
  ['legLongest', 0.01, 'm', 1],
  ['edgeMost', 1, '°', DEGREE],
  ['edgeRate', 1, 'rad/s', 1],
  ['angulationMost', 1, '°', DEGREE],
  ['friction', -0.005, '', 1],
  ['dragArea', -0.05, 'm²', 1],
  ['airDensity', -0.1, 'kg/m³', 1],
  ['mass', 5, 'kg', 1],
  ['slope', 1, '°', DEGREE],
  ['scrape', -0.1, '', 1],
  ['baseBevel', 0.1, '°', DEGREE],
  ['wallStrength', 100, 'kPa', KPA],
];

/** What each change is worth, the dearest first: of the inputs and of the ski. */
export function changeWorths(inputs: Inputs, skiWorths: readonly SkiWorth[]): ChangeWorth[] {
  const rows = CHANGES.flatMap(([input, change, unit, si]) => {
    const each = inputs[input];
    return each === undefined ? [] : [{ input, change, unit, seconds: each * change * si }];
  });
  const ofSki = skiWorths.map(({ change, by, unit, seconds }) => ({
    input: change,
    change: by,
    unit,
    seconds,
  }));
  return [...rows, ...ofSki].sort((a, b) => Math.abs(b.seconds) - Math.abs(a.seconds));
}
