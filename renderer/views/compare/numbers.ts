import { formatQuantity, type MeasureName, type System, shownAs } from '../../../core/units/index.ts';
import { type Compared, type Known, plainDecimals } from '../../answers/index.ts';

export interface NumberRow {
  readonly label: string;
  readonly measure: MeasureName;
  readonly of: (pair: Compared) => Known | null;
}

/** What stands in the table of numbers, a row each. */
export const NUMBER_ROWS: readonly NumberRow[] = [
  { label: 'Length', measure: 'skiLength', of: pair => pair.length },
  { label: 'Waist', measure: 'width', of: pair => pair.waist },
  { label: 'Sidecut radius', measure: 'radius', of: pair => pair.sidecutRadius },
  { label: 'Turn at the edge angle on screen', measure: 'radius', of: pair => pair.turnRadius },
  { label: 'Holds the chosen turn to', measure: 'speed', of: pair => pair.fastest },
  { label: 'Spring under the boot', measure: 'spring', of: pair => pair.centre },
  { label: 'Spring of the shovel', measure: 'spring', of: pair => pair.shovel },
  { label: 'Spring of the tail', measure: 'spring', of: pair => pair.rear },
  { label: 'Mass of one ski', measure: 'mass', of: pair => pair.mass },
  { label: 'Side-edge angle', measure: 'angle', of: pair => pair.sideAngle },
  { label: 'Base bevel', measure: 'angle', of: pair => pair.baseBevel },
];

export const shownNumber = (known: Known | null, measure: MeasureName, system: System): string =>
  known
    ? formatQuantity(known.value, measure, {
        system,
        uncertainty: known.plusMinus,
        decimals: plainDecimals(measure),
      }).text
    : 'not given';

/** The table for a file: value and uncertainty in columns of their own, units in the first. */
export function numberRows(pairs: readonly Compared[], system: System): string[][] {
  const headings = ['quantity', 'unit', ...pairs.flatMap(pair => [pair.name, `${pair.name} ±`])];
  return [
    headings,
    ...NUMBER_ROWS.map(({ label, measure, of }) => {
      const { unit, factor } = shownAs(measure, system);
      const cells = pairs.flatMap(pair => {
        const known = of(pair);
        const plain = (value: number) => String(Number((value * factor).toPrecision(7)));
        return known ? [plain(known.value), plain(known.plusMinus)] : ['', ''];
      });
      return [label, unit, ...cells];
    }),
  ];
}
