import type { Pair } from '../../core/pair/index.ts';
import { TAPE_AND_CALIPER } from '../../core/shape/index.ts';
import { formatQuantity, type MeasureName, MM, type System, shownAs } from '../../core/units/index.ts';
import { sidecutOf, springsOf, TAKEN_AS } from '../answers/index.ts';
import { FIELD_GROUPS, type NumberField, otherwiseText, textOf } from '../rack/index.ts';
import { t } from '../state/index.ts';

export interface ReadingGroup {
  readonly title: string;
  readonly rows: readonly (readonly [label: string, value: string])[];
}

/** Standard uncertainty of a field as measured in a ski room, in the unit of the field. */
const MEASURED: Partial<Record<string, number>> = {
  lengthMm: TAPE_AND_CALIPER.uLength / MM,
  contactLengthMm: TAPE_AND_CALIPER.uLength / MM,
  waistFromTailMm: TAPE_AND_CALIPER.uLength / MM,
  tipWidthMm: TAPE_AND_CALIPER.uWidth / MM,
  waistWidthMm: TAPE_AND_CALIPER.uWidth / MM,
  tailWidthMm: TAPE_AND_CALIPER.uWidth / MM,
  massKg: TAKEN_AS.massKg,
  'edges.baseBevelDeg': TAKEN_AS.angleDeg,
  'edges.sideAngleDeg': TAKEN_AS.angleDeg,
};

/** A tape read to 1 mm gives whole millimetres. */
const wholeDecimals = (measure: MeasureName, system: System): number | undefined =>
  measure === 'lengthMm' || measure === 'stationMm' ? (system === 'metric' ? 0 : 2) : undefined;

function absent(field: NumberField, system: System): string {
  const { otherwise } = field;
  if (otherwise === undefined || otherwise === 'common.notGiven') return t('common.notGiven');
  if (otherwise === 'common.none') return t('print.noneGiven');
  return t('print.takenAs', { value: otherwiseText(field, system)! });
}

/** What was measured and what follows from it, each with its uncertainty, as the sheet prints it. */
export function readingGroups(pair: Pair, system: System): ReadingGroup[] {
  const stated = FIELD_GROUPS.filter(
    ({ seldom, fields }) => !seldom || fields.some(field => textOf(pair, field, system) !== ''),
  );
  const measured = stated.map(({ title, fields }) => ({
    title: t(title),
    rows: fields.map(field => {
      const text = textOf(pair, field, system);
      if (!text) return [t(field.label), absent(field, system)] as const;
      const uncertainty = MEASURED[field.field];
      const value = field.field
        .split('.')
        .reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], pair);
      return uncertainty === undefined
        ? ([t(field.label), `${text} ${shownAs(field.measure, system).unit}`] as const)
        : ([
            t(field.label),
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
    title: t('print.fromShape'),
    rows: [
      row(t('shape.title.radius'), cut.radius, 'radius', cut.radiusUncertainty),
      row(t('print.exactCircle'), cut.circleRadius, 'radius'),
      row(t('shape.title.depth'), cut.depth, 'width'),
      row(t('print.trueWaist'), cut.waistStation, 'station'),
      row(t('print.taper'), cut.taper, 'angle'),
    ],
  };
}

function stiffnessGroup(pair: Pair, system: System): ReadingGroup {
  const springs = springsOf(pair);
  const spring = (value: number) =>
    formatQuantity(value, 'spring', { system, uncertainty: TAKEN_AS.stiffness * value }).text;
  return {
    title: t('print.springs'),
    rows: springs
      ? [
          [t('print.underBoot'), spring(springs.centre)],
          [t('print.shovel'), spring(springs.shovel)],
          [t('print.tail'), spring(springs.rear)],
          [t('print.shovelOverTail'), formatQuantity(springs.balance, 'number', { system }).text],
        ]
      : [[t('print.bendingStiffness'), t('common.notGiven')]],
  };
}
