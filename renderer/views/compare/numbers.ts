import type { PlainKey } from '../../../core/language/index.ts';
import { formatQuantity, type MeasureName, type System, shownAs } from '../../../core/units/index.ts';
import { type Compared, type Known, plainDecimals } from '../../answers/index.ts';
import { t } from '../../state/index.ts';

export interface NumberRow {
  readonly label: PlainKey;
  readonly measure: MeasureName;
  readonly of: (pair: Compared) => Known | null;
}

/** What stands in the table of numbers, a row each. */
export const NUMBER_ROWS: readonly NumberRow[] = [
  { label: 'common.length', measure: 'skiLength', of: pair => pair.length },
  { label: 'field.waistWidthMm', measure: 'width', of: pair => pair.waist },
  { label: 'compare.numbers.sidecutRadius', measure: 'radius', of: pair => pair.sidecutRadius },
  { label: 'compare.numbers.turn', measure: 'radius', of: pair => pair.turnRadius },
  { label: 'compare.numbers.holdsTo', measure: 'speed', of: pair => pair.fastest },
  { label: 'compare.springUnderBoot', measure: 'spring', of: pair => pair.centre },
  { label: 'compare.springShovel', measure: 'spring', of: pair => pair.shovel },
  { label: 'compare.springTail', measure: 'spring', of: pair => pair.rear },
  { label: 'field.massKg', measure: 'mass', of: pair => pair.mass },
  { label: 'field.sideAngleDeg', measure: 'angle', of: pair => pair.sideAngle },
  { label: 'field.baseBevelDeg', measure: 'angle', of: pair => pair.baseBevel },
];

export const shownNumber = (known: Known | null, measure: MeasureName, system: System): string =>
  known
    ? formatQuantity(known.value, measure, {
        system,
        uncertainty: known.plusMinus,
        decimals: plainDecimals(measure),
      }).text
    : t('common.notGiven');

/** The table for a file: value and uncertainty in columns of their own, units in the first. */
export function numberRows(pairs: readonly Compared[], system: System): string[][] {
  const headings = [
    t('compare.columnQuantity'),
    t('compare.columnUnit'),
    ...pairs.flatMap(pair => [pair.name, `${pair.name} ±`]),
  ];
  return [
    headings,
    ...NUMBER_ROWS.map(({ label, measure, of }) => {
      const { unit, factor } = shownAs(measure, system);
      const cells = pairs.flatMap(pair => {
        const known = of(pair);
        const plain = (value: number) => String(Number((value * factor).toPrecision(7)));
        return known ? [plain(known.value), plain(known.plusMinus)] : ['', ''];
      });
      return [t(label), unit, ...cells];
    }),
  ];
}
