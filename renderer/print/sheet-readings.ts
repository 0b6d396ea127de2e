import type { Pair } from '../../core/pair/index.ts';
import { TAPE_AND_CALIPER } from '../../core/shape/index.ts';
import { formatQuantity, type MeasureName, type System, shownAs } from '../../core/units/index.ts';
import { sidecutOf, springsOf, TAKEN_AS } from '../answers/index.ts';
import { FIELD_GROUPS, otherwiseText, textOf } from '../rack/index.ts';

export interface ReadingGroup {
  readonly title: string;
  readonly rows: readonly (readonly [label: string, value: string])[];
}

/** Standard uncertainty of a field as measured in a ski room, in the unit of the field. */
const MEASURED: Partial<Record<string, number>> = {
  lengthMm: TAPE_AND_CALIPER.uLength * 1e3,
  contactLengthMm: TAPE_AND_CALIPER.uLength * 1e3,
  waistFromTailMm: TAPE_AND_CALIPER.uLength * 1e3,
  tipWidthMm: TAPE_AND_CALIPER.uWidth * 1e3,
  waistWidthMm: TAPE_AND_CALIPER.uWidth * 1e3,
  tailWidthMm: TAPE_AND_CALIPER.uWidth * 1e3,
  massKg: TAKEN_AS.massKg,
  'edges.baseBevelDeg': TAKEN_AS.angleDeg,
  'edges.sideAngleDeg': TAKEN_AS.angleDeg,
};

/** A tape read to 1 mm gives whole millimetres. */
const wholeDecimals = (measure: MeasureName, system: System): number | undefined =>
  measure === 'lengthMm' || measure === 'stationMm' ? (system === 'metric' ? 0 : 2) : undefined;

const absent = (otherwise: string | undefined) => {
  if (otherwise === undefined || otherwise === 'not given') return 'not given';
  return otherwise === 'none' ? 'none given' : `${otherwise} (none given)`;
};

/** What was measured and what follows from it, each with its uncertainty, as the sheet prints it. */
export function readingGroups(pair: Pair, system: System): ReadingGroup[] {
  const stated = FIELD_GROUPS.filter(
    ({ seldom, fields }) => !seldom || fields.some(field => textOf(pair, field, system) !== ''),
  );
  const measured = stated.map(({ title, fields }) => ({
    title,
    rows: fields.map(field => {
      const text = textOf(pair, field, system);
      if (!text) return [field.label, absent(otherwiseText(field, system))] as const;
      const uncertainty = MEASURED[field.field];
      const value = field.field
        .split('.')
        .reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], pair);
      return uncertainty === undefined
        ? ([field.label, `${text} ${shownAs(field.measure, system).unit}`] as const)
        : ([
            field.label,
            formatQuantity(Number(value), field.measure, {
              system,
              uncertainty,
              decimals: wholeDecimals(field.measure, system),
            }).text,
          ] as const);
    }),
  }));
  return [...measured, shapeGroup(pair, system), stiffnessGroup(pair, system)];
}

function shapeGroup(pair: Pair, system: System): ReadingGroup {
  const cut = sidecutOf(pair);
  const row = (label: string, value: number, measure: MeasureName, uncertainty?: number) =>
    [label, formatQuantity(value, measure, { system, uncertainty }).text] as const;
  return {
    title: 'What follows from the shape',
    rows: [
      row('Sidecut radius', cut.radius, 'radius', cut.radiusUncertainty),
      row('Exact circle', cut.circleRadius, 'radius'),
      row('Sidecut depth', cut.depth, 'width'),
      row('True waist from rear contact', cut.waistStation, 'station'),
      row('Taper of either edge', cut.taper, 'angle'),
    ],
  };
}

function stiffnessGroup(pair: Pair, system: System): ReadingGroup {
  const springs = springsOf(pair);
  const spring = (value: number) =>
    formatQuantity(value, 'spring', { system, uncertainty: TAKEN_AS.stiffness * value }).text;
  return {
    title: 'Springs',
    rows: springs
      ? [
          ['Under the boot', spring(springs.centre)],
          ['Shovel', spring(springs.shovel)],
          ['Tail', spring(springs.rear)],
          ['Shovel over tail', formatQuantity(springs.balance, 'number', { system }).text],
        ]
      : [['Bending stiffness', 'not given']],
  };
}
