import type { Edition, Limit } from './edition.ts';

/**
 * The limits known to this program. Each value keeps how well it is established: `seen` was read in the
 * source named, `from memory` was recalled and must be confirmed. Only the rulebook in force and the
 * equipment controller decide.
 */

const guide = "minimum lengths and radii as listed by an Olympic broadcaster's guide";
const copy = "encyclopaedia copy of the international federation's equipment specification, 2024/25";
const memory = 'recalled, not looked up: confirm in the rulebook in force';

const men = ['men'] as const;
const women = ['women'] as const;
const children = ['U16 boys', 'U16 girls', 'U14 boys', 'U14 girls'] as const;

type Row = Omit<Limit, 'disciplines' | 'categories'>;

function row(
  disciplines: readonly Limit['disciplines'][number][],
  categories: readonly Limit['categories'][number][],
  rest: Row,
): Limit {
  return { ...rest, disciplines: [...disciplines], categories: [...categories] };
}

const lengthAtLeast = (least: number, source: string, lowerLevel = false): Row => ({
  rule: 'length at least',
  quantity: 'lengthMm',
  least,
  ...(lowerLevel ? { lowerLevelTolerance: 50 } : {}),
  status: 'seen',
  source: lowerLevel ? `${source}; −5 cm in lower-level races as in an older edition` : source,
});

const radiusAtLeast = (least: number, source: string): Row => ({
  rule: 'radius at least',
  quantity: 'radiusM',
  least,
  status: 'seen',
  source,
});

const recalled = (rest: Omit<Row, 'status' | 'source'>): Row => ({
  ...rest,
  status: 'from memory',
  source: memory,
});

export const season2024: Edition = {
  format: 'turnwright.rules',
  version: 1,
  edition: 'International federation 2024/25, as known to this program',
  notes:
    'The width limits for giant slalom are as in a federation notice for 2016/17; the children’s limits and ' +
    'the widths for the other disciplines are from memory.',
  limits: [
    row(['DH'], men, lengthAtLeast(2180, guide, true)),
    row(['DH'], men, radiusAtLeast(50, guide)),
    row(['SG'], men, lengthAtLeast(2100, guide, true)),
    row(['SG'], men, radiusAtLeast(45, guide)),
    row(['GS'], men, lengthAtLeast(1930, copy, true)),
    row(['GS'], men, radiusAtLeast(30, copy)),
    row(['SL'], men, lengthAtLeast(1650, guide)),
    row(['DH'], women, lengthAtLeast(2100, guide, true)),
    row(['DH'], women, radiusAtLeast(50, guide)),
    row(['SG'], women, lengthAtLeast(2050, guide, true)),
    row(['SG'], women, radiusAtLeast(40, guide)),
    row(['GS'], women, lengthAtLeast(1880, copy, true)),
    row(['GS'], women, radiusAtLeast(30, copy)),
    row(['SL'], women, lengthAtLeast(1550, guide)),
    row(['GS'], men, {
      rule: 'width under the binding at most',
      quantity: 'waistWidthMm',
      most: 65,
      status: 'seen',
      source: 'federation notice for 2016/17, in force since 2017/18',
    }),
    row(['GS'], men, {
      rule: 'width at the front at most',
      quantity: 'frontWidthMm',
      most: 103,
      status: 'seen',
      source: 'federation notice for 2016/17, in force since 2017/18',
    }),
    row(
      ['SL'],
      [...men, ...women],
      recalled({
        rule: 'width under the binding at least',
        quantity: 'waistWidthMm',
        least: 63,
      }),
    ),
    row(
      ['SG', 'DH'],
      [...men, ...women],
      recalled({
        rule: 'width under the binding at most',
        quantity: 'waistWidthMm',
        most: 65,
      }),
    ),
    row(
      ['SG', 'DH'],
      [...men, ...women],
      recalled({
        rule: 'width at the front at most',
        quantity: 'frontWidthMm',
        most: 95,
      }),
    ),
    row(['SL', 'GS', 'SG', 'DH'], [...men, ...women], {
      rule: 'standing height at most',
      quantity: 'standingHeightMm',
      most: 50,
      status: 'seen',
      source: 'international federation equipment specification',
    }),
    row(['SL', 'GS', 'SG', 'DH'], [...men, ...women], {
      rule: 'boot sole height at most',
      quantity: 'bootSoleMm',
      most: 43,
      status: 'seen',
      source: 'international federation equipment specification',
    }),
    row(['SL'], children, recalled({ rule: 'length at least', quantity: 'lengthMm', least: 1300 })),
    row(['GS'], children, recalled({ rule: 'length at most', quantity: 'lengthMm', most: 1880 })),
    row(['GS'], children, recalled({ rule: 'radius at least', quantity: 'radiusM', least: 17 })),
    row(['SG'], children, recalled({ rule: 'radius at least', quantity: 'radiusM', least: 27 })),
  ],
};

/** Every edition that comes with the program, newest first. */
export const editions: readonly Edition[] = [season2024];
