import type { SkiWorth, Worth } from '../../core/line/index.ts';
import { DEGREE, KMH, KPA } from '../../core/units/index.ts';
import { rounded } from './quantity.ts';

export interface WorthRow {
  readonly input: string;
  readonly change: number;
  readonly unit: string;
  /** Seconds that the change brings, of a gate or of the whole set; negative is quicker. */
  readonly seconds: number | null;
}

type Inputs = Worth & { readonly startSpeed?: number };

/** Changes a skier or a technician can make, in the unit told, and that unit in SI. */
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

/** What each change is worth, the dearest first: of the inputs, in seconds per SI unit, and of the ski. */
export function worthRows(inputs: Inputs, skiWorths: readonly SkiWorth[]): WorthRow[] {
  const rows = [
    ...CHANGES.flatMap(([input, change, unit, si]) => {
      const each = inputs[input];
      return each === undefined ? [] : [{ input, change, unit, seconds: each * change * si }];
    }),
    ...skiWorths.map(({ change, by, unit, seconds }) => ({ input: change, change: by, unit, seconds })),
  ];
  return rows
    .sort((a, b) => Math.abs(b.seconds) - Math.abs(a.seconds))
    .map(row => ({ ...row, seconds: rounded(row.seconds) }));
}

/** The rows in words, for reading. */
export const spokenWorth = (rows: readonly WorthRow[], of: 'a gate' | 'in all' = 'a gate') =>
  rows.map(({ input, change, unit, seconds }) => ({
    'what changes': SPOKEN[input] ?? input,
    by: `${change > 0 ? '+' : '−'}${Math.abs(change)}${unit === '' ? '' : ` ${unit}`}`,
    [`ms ${of}`]: seconds === null ? null : 1000 * seconds,
  }));

const SPOKEN: Readonly<Record<string, string>> = {
  startSpeed: 'speed at the start',
  clearance: 'clearance at the pole',
  legSpeed: 'leg speed',
  pushMost: 'strength',
  pushRate: 'quickness of the push',
  legLongest: 'longest leg',
  edgeMost: 'greatest edge angle',
  edgeRate: 'edge rate',
  angulationMost: 'angulation',
  friction: 'friction (wax)',
  dragArea: 'drag area (suit, posture)',
  airDensity: 'air density',
  mass: 'mass',
  slope: 'slope',
  scrape: 'scrape of a slipping edge',
  baseBevel: 'base bevel',
  wallStrength: 'strength of the wall of snow',
  tipWidth: 'tip width',
  waistWidth: 'waist width',
  tailWidth: 'tail width',
  bendingStiffness: 'bending stiffness',
  torsionalStiffness: 'torsional stiffness',
  hardness: 'hardness of the snow',
};
