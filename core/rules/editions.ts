import type { Edition, Limit } from './edition.ts';
import { EDITION_TEXTS as TEXTS } from './edition-words.ts';

/**
 * The limits known to this program. Each value keeps how well it is established: `seen` was read in the
 * source named, `from memory` was recalled and must be confirmed. Only the rulebook in force and the
 * equipment controller decide.
 */

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

const lengthAtLeast = (least: number, source: 'guide' | 'copy', lowerLevel = false): Row => ({
  rule: TEXTS.lengthAtLeast,
  quantity: 'lengthMm',
  least,
  ...(lowerLevel ? { lowerLevelTolerance: 50 } : {}),
  status: 'seen',
  source: TEXTS[lowerLevel ? (`${source}Eased` as const) : source],
});

const radiusAtLeast = (least: number, source: 'guide' | 'copy'): Row => ({
  rule: TEXTS.radiusAtLeast,
  quantity: 'radiusM',
  least,
  status: 'seen',
  source: TEXTS[source],
});

const recalled = (rest: Omit<Row, 'status' | 'source'>): Row => ({
  ...rest,
  status: 'from memory',
  source: TEXTS.memory,
});

export const season2024: Edition = {
  format: 'turnwright.rules',
  version: 1,
  edition: TEXTS.season2024,
  notes: TEXTS.season2024Notes,
  limits: [
    row(['DH'], men, lengthAtLeast(2180, 'guide', true)),
    row(['DH'], men, radiusAtLeast(50, 'guide')),
    row(['SG'], men, lengthAtLeast(2100, 'guide', true)),
    row(['SG'], men, radiusAtLeast(45, 'guide')),
    row(['GS'], men, lengthAtLeast(1930, 'copy', true)),
    row(['GS'], men, radiusAtLeast(30, 'copy')),
    row(['SL'], men, lengthAtLeast(1650, 'guide')),
    row(['DH'], women, lengthAtLeast(2100, 'guide', true)),
    row(['DH'], women, radiusAtLeast(50, 'guide')),
    row(['SG'], women, lengthAtLeast(2050, 'guide', true)),
    row(['SG'], women, radiusAtLeast(40, 'guide')),
    row(['GS'], women, lengthAtLeast(1880, 'copy', true)),
    row(['GS'], women, radiusAtLeast(30, 'copy')),
    row(['SL'], women, lengthAtLeast(1550, 'guide')),
    row(['GS'], men, {
      rule: TEXTS.waistAtMost,
      quantity: 'waistWidthMm',
      most: 65,
      status: 'seen',
      source: TEXTS.notice,
    }),
    row(['GS'], men, {
      rule: TEXTS.frontAtMost,
      quantity: 'frontWidthMm',
      most: 103,
      status: 'seen',
      source: TEXTS.notice,
    }),
    row(
      ['SL'],
      [...men, ...women],
      recalled({
        rule: TEXTS.waistAtLeast,
        quantity: 'waistWidthMm',
        least: 63,
      }),
    ),
    row(
      ['SG', 'DH'],
      [...men, ...women],
      recalled({
        rule: TEXTS.waistAtMost,
        quantity: 'waistWidthMm',
        most: 65,
      }),
    ),
    row(
      ['SG', 'DH'],
      [...men, ...women],
      recalled({
        rule: TEXTS.frontAtMost,
        quantity: 'frontWidthMm',
        most: 95,
      }),
    ),
    row(['SL', 'GS', 'SG', 'DH'], [...men, ...women], {
      rule: TEXTS.standingHeightAtMost,
      quantity: 'standingHeightMm',
      most: 50,
      status: 'seen',
      source: TEXTS.specification,
    }),
    row(['SL', 'GS', 'SG', 'DH'], [...men, ...women], {
      rule: TEXTS.soleHeightAtMost,
      quantity: 'bootSoleMm',
      most: 43,
      status: 'seen',
      source: TEXTS.specification,
    }),
    row(['SL'], children, recalled({ rule: TEXTS.lengthAtLeast, quantity: 'lengthMm', least: 1300 })),
    row(['GS'], children, recalled({ rule: TEXTS.lengthAtMost, quantity: 'lengthMm', most: 1880 })),
    row(['GS'], children, recalled({ rule: TEXTS.radiusAtLeast, quantity: 'radiusM', least: 17 })),
    row(['SG'], children, recalled({ rule: TEXTS.radiusAtLeast, quantity: 'radiusM', least: 27 })),
  ],
};

/** Every edition that comes with the program, newest first. */
export const editions: readonly Edition[] = [season2024];
