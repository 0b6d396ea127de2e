import {
  changedCase,
  type GrooveCase,
  type LineConditions,
  type LineWorth,
  SKI_CHANGES,
  type Worth,
  worthOfGroove,
} from '../../core/line/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { DEGREE, KPA } from '../../core/units/index.ts';
import { rounded } from './quantity.ts';

export interface WorthRow {
  readonly input: string;
  readonly change: number;
  readonly unit: string;
  /** Seconds a gate that the change brings; negative is quicker. */
  readonly seconds: number | null;
}

/** Changes a skier or a technician can make, in the unit told, and that unit in SI. */
const CHANGES: readonly (readonly [input: keyof Worth, change: number, unit: string, si: number])[] = [
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

/** What each change is worth, the dearest first; those of the ski only where its groove is solved. */
export function rhythmWorth(
  ski: Ski,
  conditions: LineConditions,
  { inputs, groove: worth }: LineWorth,
  groove: GrooveCase | null,
): WorthRow[] {
  const rows: (Omit<WorthRow, 'seconds'> & { readonly seconds: number })[] = CHANGES.map(
    ([input, change, unit, si]) => ({
      input,
      change,
      unit,
      seconds: inputs[input] * change * si,
    }),
  );
  for (const { change, by, unit } of groove ? SKI_CHANGES : []) {
    const changed = changedCase(ski, groove as GrooveCase, change, by);
    const seconds = changed && worthOfGroove(worth, conditions.ski, groove as GrooveCase, changed);
    if (seconds !== null) rows.push({ input: change, change: by, unit, seconds });
  }
  return rows
    .sort((a, b) => Math.abs(b.seconds) - Math.abs(a.seconds))
    .map(row => ({ ...row, seconds: rounded(row.seconds) }));
}

/** The rows in words, for reading. */
export const spokenWorth = (rows: readonly WorthRow[]) =>
  rows.map(({ input, change, unit, seconds }) => ({
    'what changes': SPOKEN[input] ?? input,
    by: `${change > 0 ? '+' : '−'}${Math.abs(change)}${unit === '' ? '' : ` ${unit}`}`,
    'ms a gate': seconds === null ? null : 1000 * seconds,
  }));

const SPOKEN: Readonly<Record<string, string>> = {
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
