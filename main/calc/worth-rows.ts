import type { PlainKey } from '../../core/language/index.ts';
import type { SkiWorth, Worth } from '../../core/line/index.ts';
import { DEGREE, KMH, KPA } from '../../core/units/index.ts';
import { rounded } from './quantity.ts';
import { t } from './words.ts';

/** The unit of what legs push with, as documents name it. */
const BODY_WEIGHTS = 'body weights';

type Inputs = Worth & { readonly startSpeed?: number };

/** Changes a skier or a technician can make, in the unit told, and that unit in SI. */
const CHANGES = [
  ['startSpeed', 1, 'km/h', KMH],
  ['clearance', -0.05, 'm', 1],
  ['legSpeed', 0.1, 'm/s', 1],
  ['pushMost', 0.2, BODY_WEIGHTS, 1],
  ['pushRate', 1, `${BODY_WEIGHTS}/s`, 1],
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
] as const satisfies readonly (readonly [input: keyof Inputs, change: number, unit: string, si: number])[];

export interface WorthRow {
  readonly input: (typeof CHANGES)[number][0] | SkiWorth['change'];
  readonly change: number;
  readonly unit: string;
  /** Seconds that the change brings, of a gate or of the whole set; negative is quicker. */
  readonly seconds: number | null;
}

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

/** The rows in words, for reading; the seconds are those of a gate or in all. */
export const spokenWorth = (rows: readonly WorthRow[], of: 'calc.worth.perGate' | 'calc.worth.inAll') =>
  rows.map(({ input, change, unit, seconds }) => ({
    [t('calc.worth.what')]: t(`calc.worth.${input}`),
    [t('calc.worth.by')]: `${change > 0 ? '+' : '−'}${Math.abs(change)}${unitWords(unit)}`,
    [t(of)]: seconds === null ? null : 1000 * seconds,
  }));

/** Units that are words. */
const UNITS: Readonly<Record<string, PlainKey>> = {
  [BODY_WEIGHTS]: 'calc.bodyWeights',
  [`${BODY_WEIGHTS}/s`]: 'calc.bodyWeightRate',
};

function unitWords(unit: string): string {
  if (unit === '') return '';
  const called = UNITS[unit];
  return ` ${called ? t(called) : unit}`;
}
