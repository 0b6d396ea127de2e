import type { PlainKey, Sentence } from '../../core/language/index.ts';
import { DEFAULTS, type SheetField } from '../../core/pair/index.ts';
import { formatQuantity, type MeasureName, type System, shownAs } from '../../core/units/index.ts';
import { inWords, t } from '../state/index.ts';

/** One line of the pair form; `field` is the path in the pair file and in the checker's messages. */
export interface NumberField {
  readonly field: string;
  readonly label: PlainKey;
  readonly measure: MeasureName;
  readonly decimals?: number;
  /** What stands when the field is left empty, in words or in the field's unit; absent for required fields. */
  readonly otherwise?: PlainKey | Sentence | number;
}

export interface FieldGroup {
  readonly title: PlainKey;
  readonly hint?: PlainKey;
  /** Few pairs state any of it: a printed page leaves the group out where a pair states none. */
  readonly seldom?: boolean;
  readonly fields: readonly NumberField[];
}

export const FIELD_GROUPS: readonly FieldGroup[] = [
  {
    title: 'rack.lengths',
    hint: 'rack.lengthsHint',
    fields: [
      { field: 'lengthMm', label: 'field.lengthMm', measure: 'lengthMm' },
      { field: 'contactLengthMm', label: 'field.contactLengthMm', measure: 'lengthMm' },
      {
        field: 'waistFromTailMm',
        label: 'field.waistFromTailMm',
        measure: 'stationMm',
        otherwise: 'rack.takenMidway',
      },
      {
        field: 'bootCentreFromTailMm',
        label: 'field.bootCentreFromTailMm',
        measure: 'stationMm',
        otherwise: { key: 'rack.shareOfContact', values: { share: DEFAULTS.bootCentreShare } },
      },
      { field: 'bootSoleMm', label: 'field.bootSoleMm', measure: 'lengthMm', otherwise: DEFAULTS.bootSoleMm },
    ],
  },
  {
    title: 'rack.widths',
    fields: [
      { field: 'tipWidthMm', label: 'field.tipWidthMm', measure: 'widthMm' },
      { field: 'waistWidthMm', label: 'field.waistWidthMm', measure: 'widthMm' },
      { field: 'tailWidthMm', label: 'field.tailWidthMm', measure: 'widthMm' },
    ],
  },
  {
    title: 'rack.camberAndMass',
    fields: [
      { field: 'camberMm', label: 'field.camberMm', measure: 'widthMm', otherwise: 'common.none' },
      {
        field: 'massKg',
        label: 'field.massKg',
        measure: 'massKg',
        decimals: 2,
        otherwise: 'common.notGiven',
      },
    ],
  },
  {
    title: 'rack.plate',
    seldom: true,
    hint: 'rack.plateHint',
    fields: [
      {
        field: 'plate.fromTailMm',
        label: 'field.plate.fromTailMm',
        measure: 'stationMm',
        otherwise: 'rack.noPlate',
      },
      {
        field: 'plate.lengthMm',
        label: 'field.plate.lengthMm',
        measure: 'lengthMm',
        otherwise: 'rack.noPlate',
      },
      {
        field: 'plate.newtonM2',
        label: 'field.plate.newtonM2',
        measure: 'stiffness',
        otherwise: 'rack.noPlate',
      },
      {
        field: 'plate.torsionNewtonM2',
        label: 'field.plate.torsionNewtonM2',
        measure: 'stiffness',
        otherwise: 'rack.nothing',
      },
    ],
  },
  {
    title: 'rack.bootOnSki',
    seldom: true,
    fields: [
      {
        field: 'standingHeightMm',
        label: 'field.standingHeightMm',
        measure: 'widthMm',
        otherwise: DEFAULTS.standingHeightMm,
      },
      {
        field: 'bootSoleHeightMm',
        label: 'field.bootSoleHeightMm',
        measure: 'widthMm',
        otherwise: DEFAULTS.bootSoleHeightMm,
      },
      {
        field: 'bootSoleNewtonM2',
        label: 'field.bootSoleNewtonM2',
        measure: 'stiffness',
        otherwise: 'rack.nothing',
      },
    ],
  },
  {
    title: 'rack.edges',
    fields: [
      {
        field: 'edges.baseBevelDeg',
        label: 'field.baseBevelDeg',
        measure: 'angleDeg',
        otherwise: DEFAULTS.baseBevelDeg,
      },
      {
        field: 'edges.sideAngleDeg',
        label: 'field.sideAngleDeg',
        measure: 'angleDeg',
        otherwise: DEFAULTS.sideAngleDeg,
      },
    ],
  },
];

export const NUMBER_FIELDS: readonly NumberField[] = FIELD_GROUPS.flatMap(group => group.fields);

/** What stands when the field is left empty, as a person reads it in the chosen system. */
export function otherwiseText({ otherwise, measure }: NumberField, system: System): string | undefined {
  if (otherwise === undefined) return undefined;
  if (typeof otherwise === 'string') return t(otherwise);
  if (typeof otherwise === 'object') return inWords(otherwise);
  const whole = Number.isInteger(otherwise * shownAs(measure, system).factor);
  return formatQuantity(otherwise, measure, whole ? { system, decimals: 0 } : { system }).text;
}

/** What a field of a technician's sheet is called, as the pair form calls it. */
export const fieldLabel = (field: SheetField): string => t(`field.${field}`);
