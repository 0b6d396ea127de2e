import * as z from 'zod';
import { DEFAULTS } from './defaults.ts';
import { accepting, acceptingKey, acceptingShape, list, quantity, text } from './fields.ts';
import { addedNewtonM2, plateSchema } from './plate-schema.ts';
import { stiffnessSchema } from './stiffness-schema.ts';

export const PAIR_FORMAT = 'turnwright.pair';
export const PAIR_VERSION = 1;
export const CONTACT_LENGTH_MM = { from: 400, to: 2400 } as const;
/** Fewer width stations say less about the edge than the three widths; they are kept, not used. */
export const LEAST_WIDTH_STATIONS = 5;

/** Whole, from 1. */
export const VERSION = accepting({ from: 1, whole: true });

const DISCIPLINES = ['SL', 'GS', 'SG', 'DH', 'other'] as const;

const widthStation = z.looseObject(
  {
    fromTailMm: quantity(0, 2500, 'mm', 'Distance from the rear contact point'),
    widthMm: quantity(20, 300, 'mm', 'Full width'),
  },
  acceptingShape('{ fromTailMm, widthMm }'),
);

const edges = z.looseObject(
  {
    baseBevelDeg: quantity(0, 5, 'degrees', `Base bevel; ${DEFAULTS.baseBevelDeg} when absent`).optional(),
    sideAngleDeg: quantity(
      80,
      90,
      'degrees',
      `Side-edge angle; ${DEFAULTS.sideAngleDeg} when absent`,
    ).optional(),
  },
  acceptingShape('{ baseBevelDeg?, sideAngleDeg? }'),
);

/** Any of them may wait: the ski lies on the bench while they are taken one after the other. */
const reading = {
  developedLengthMm: quantity(600, 2500, 'mm', 'Developed length, tail to tip along the base').optional(),
  tailToWaistMm: quantity(80, 2000, 'mm', 'From the tail to the narrowest point').optional(),
  frontWidthMm: quantity(40, 250, 'mm', 'Full width at 80 % of the part ahead of the waist').optional(),
  rearWidthMm: quantity(40, 250, 'mm', 'Full width at 90 % of the part behind the waist').optional(),
  waistWidthMm: quantity(30, 200, 'mm', 'Full width at the narrowest point').optional(),
};

const repeat = z.looseObject(
  reading,
  acceptingShape('{ developedLengthMm?, tailToWaistMm?, frontWidthMm?, rearWidthMm?, waistWidthMm? }'),
);

const control = z.looseObject(
  {
    ...reading,
    repeats: list(repeat, 0, 2, 'pair.furtherReadings')
      .optional()
      .describe(
        'Second and third reading, taken when the first is under the limit; 1.015 × the mean of three decides.',
      ),
  },
  acceptingShape(
    '{ developedLengthMm?, tailToWaistMm?, frontWidthMm?, rearWidthMm?, waistWidthMm?, repeats? }',
  ),
);

/**
 * The pair file field by field, in the order it is written. Objects are loose so that fields of other
 * programs and later versions survive a save. Relations between fields are in `consistency.ts`.
 */
export const pairSchema = z.looseObject(
  {
    format: z.literal(PAIR_FORMAT, accepting({ oneOf: [`"${PAIR_FORMAT}"`] })),
    version: z.int(VERSION).min(1, VERSION),
    id: text(1, 80, 'Label that stays the same when the pair is renamed').optional(),
    name: text(1, 120, 'Name of the pair'),
    discipline: z.enum(DISCIPLINES, accepting({ oneOf: DISCIPLINES })).optional(),
    owner: text(0, 120, 'Whose pair it is').optional(),
    lengthMm: quantity(600, 2500, 'mm', 'Overall length'),
    contactLengthMm: quantity(
      CONTACT_LENGTH_MM.from,
      CONTACT_LENGTH_MM.to,
      'mm',
      'Distance between the rear and front contact points',
    ),
    tipWidthMm: quantity(40, 250, 'mm', 'Full width at the front contact point'),
    waistWidthMm: quantity(30, 200, 'mm', 'Least full width'),
    tailWidthMm: quantity(40, 250, 'mm', 'Full width at the rear contact point'),
    waistFromTailMm: quantity(80, 2000, 'mm', 'Where the waist was measured').optional(),
    widthStations: list(widthStation, 0, 500, 'pair.widthStations')
      .optional()
      .describe(
        `Full widths along the edge; the shape follows them from ${LEAST_WIDTH_STATIONS} on, fewer are only kept.`,
      ),
    camberMm: quantity(0, 40, 'mm', `Free camber height; ${DEFAULTS.camberMm} when absent`).optional(),
    bootCentreFromTailMm: quantity(
      80,
      2000,
      'mm',
      `Boot centre; ${DEFAULTS.bootCentreShare} of the contact length when absent`,
    ).optional(),
    bootSoleMm: quantity(180, 400, 'mm', `Boot sole length; ${DEFAULTS.bootSoleMm} when absent`).optional(),
    massKg: quantity(0.3, 10, 'kg', 'Mass of one ski').optional(),
    bending: stiffnessSchema.optional().describe('Bending stiffness EI; without it the ski cannot be bent.'),
    torsion: stiffnessSchema.optional().describe('Torsional stiffness GJ; rigid in torsion when absent.'),
    plate: plateSchema
      .optional()
      .describe('Plate under the binding: bending and torsion are those of the bare ski, it adds to them.'),
    edges: edges.optional(),
    control: control
      .optional()
      .describe('Readings of the equipment control; with all five the rule check uses them.'),
    standingHeightMm: quantity(
      10,
      120,
      'mm',
      `Standing height: snow to the underside of the boot sole; ${DEFAULTS.standingHeightMm} when absent`,
    ).optional(),
    bootSoleHeightMm: quantity(
      10,
      120,
      'mm',
      `Boot sole height: underside of the sole to the foot bed; ${DEFAULTS.bootSoleHeightMm} when absent`,
    ).optional(),
    bootSoleNewtonM2: addedNewtonM2(
      'Bending stiffness EI that the boot in its binding adds over the sole; 0 when absent',
    ).optional(),
    demo: z.boolean(acceptingKey('accepted.trueOrFalse')).optional(),
    notes: text(0, 20000, 'Notes').optional(),
  },
  acceptingKey('accepted.object'),
);

/** A pair of skis as its file states it, in mm, degrees, kg and N·m². Unknown fields are carried along. */
export type Pair = z.infer<typeof pairSchema>;
