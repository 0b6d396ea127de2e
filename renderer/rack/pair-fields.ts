import { DEFAULTS } from '../../core/pair/index.ts';
import { formatQuantity, type MeasureName, type System, shownAs } from '../../core/units/index.ts';

/** One line of the pair form; `field` is the path in the pair file and in the checker's messages. */
export interface NumberField {
  readonly field: string;
  readonly label: string;
  readonly measure: MeasureName;
  readonly decimals?: number;
  /** What stands when the field is left empty, in words or in the field's unit; absent for required fields. */
  readonly otherwise?: string | number;
}

export interface FieldGroup {
  readonly title: string;
  readonly hint?: string;
  /** Few pairs state any of it: a printed page leaves the group out where a pair states none. */
  readonly seldom?: boolean;
  readonly fields: readonly NumberField[];
}

export const FIELD_GROUPS: readonly FieldGroup[] = [
  {
    title: 'Lengths',
    hint: 'Stations are measured from the rear contact point.',
    fields: [
      { field: 'lengthMm', label: 'Overall length', measure: 'lengthMm' },
      { field: 'contactLengthMm', label: 'Contact length', measure: 'lengthMm' },
      {
        field: 'waistFromTailMm',
        label: 'Waist from rear contact',
        measure: 'stationMm',
        otherwise: 'taken midway',
      },
      {
        field: 'bootCentreFromTailMm',
        label: 'Boot centre from rear contact',
        measure: 'stationMm',
        otherwise: `${DEFAULTS.bootCentreShare} × contact length`,
      },
      { field: 'bootSoleMm', label: 'Boot sole', measure: 'lengthMm', otherwise: DEFAULTS.bootSoleMm },
    ],
  },
  {
    title: 'Widths',
    fields: [
      { field: 'tipWidthMm', label: 'Tip', measure: 'widthMm' },
      { field: 'waistWidthMm', label: 'Waist', measure: 'widthMm' },
      { field: 'tailWidthMm', label: 'Tail', measure: 'widthMm' },
    ],
  },
  {
    title: 'Camber and mass',
    fields: [
      { field: 'camberMm', label: 'Camber', measure: 'widthMm', otherwise: 'none' },
      { field: 'massKg', label: 'Mass of one ski', measure: 'massKg', decimals: 2, otherwise: 'not given' },
    ],
  },
  {
    title: 'Plate',
    seldom: true,
    hint: 'EI and GJ below are those of the bare ski; the plate adds to them over its length. Leave empty for none.',
    fields: [
      {
        field: 'plate.fromTailMm',
        label: 'Plate from rear contact',
        measure: 'stationMm',
        otherwise: 'no plate',
      },
      { field: 'plate.lengthMm', label: 'Plate length', measure: 'lengthMm', otherwise: 'no plate' },
      { field: 'plate.newtonM2', label: 'Plate adds to EI', measure: 'stiffness', otherwise: 'no plate' },
      {
        field: 'plate.torsionNewtonM2',
        label: 'Plate adds to GJ',
        measure: 'stiffness',
        otherwise: 'nothing',
      },
    ],
  },
  {
    title: 'Boot on the ski',
    seldom: true,
    fields: [
      {
        field: 'standingHeightMm',
        label: 'Standing height',
        measure: 'widthMm',
        otherwise: DEFAULTS.standingHeightMm,
      },
      {
        field: 'bootSoleHeightMm',
        label: 'Boot sole height',
        measure: 'widthMm',
        otherwise: DEFAULTS.bootSoleHeightMm,
      },
      { field: 'bootSoleNewtonM2', label: 'Boot adds to EI', measure: 'stiffness', otherwise: 'nothing' },
    ],
  },
  {
    title: 'Edges',
    fields: [
      {
        field: 'edges.baseBevelDeg',
        label: 'Base bevel',
        measure: 'angleDeg',
        otherwise: DEFAULTS.baseBevelDeg,
      },
      {
        field: 'edges.sideAngleDeg',
        label: 'Side-edge angle',
        measure: 'angleDeg',
        otherwise: DEFAULTS.sideAngleDeg,
      },
    ],
  },
];

export const NUMBER_FIELDS: readonly NumberField[] = FIELD_GROUPS.flatMap(group => group.fields);

/** What stands when the field is left empty, as a person reads it in the chosen system. */
export function otherwiseText({ otherwise, measure }: NumberField, system: System): string | undefined {
  if (typeof otherwise !== 'number') return otherwise;
  const whole = Number.isInteger(otherwise * shownAs(measure, system).factor);
  return formatQuantity(otherwise, measure, whole ? { system, decimals: 0 } : { system }).text;
}

/** The name without its group, as a technician's sheet has it. */
const bare = (field: string) => field.replace(/^edges\./, '');

/** What a field of a technician's sheet is called, as the pair form calls it. */
export function fieldLabel(field: string): string {
  const known = NUMBER_FIELDS.find(each => bare(each.field) === field);
  return known?.label ?? field[0]!.toUpperCase() + field.slice(1);
}
