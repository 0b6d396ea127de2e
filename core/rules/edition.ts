import { z } from 'zod';
import { acceptingKey } from '../pair/index.ts';

/**
 * One edition of competition limits as data. Rules change every season, so nothing about them is code: a
 * person can write the edition in force as a file (`"format": "turnwright.rules"`) and check against that.
 */

export const disciplines = ['SL', 'GS', 'SG', 'DH', 'other'] as const;
export const categories = ['men', 'women', 'U16 boys', 'U16 girls', 'U14 boys', 'U14 girls'] as const;
const limitedQuantities = [
  'lengthMm',
  'radiusM',
  'waistWidthMm',
  'frontWidthMm',
  'standingHeightMm',
  'bootSoleMm',
] as const;

export type Discipline = (typeof disciplines)[number];
export type Category = (typeof categories)[number];
export type LimitedQuantity = (typeof limitedQuantities)[number];

const positive = z.number().positive().finite();

const limitSchema = z
  .object({
    /** What the rule is called on screen. */
    rule: z.string().min(1),
    quantity: z.enum(limitedQuantities),
    disciplines: z.array(z.enum(disciplines)).min(1),
    categories: z.array(z.enum(categories)).min(1),
    least: positive.optional(),
    most: positive.optional(),
    /** How far below `least` lower-level races accept, in the quantity's unit. */
    lowerLevelTolerance: positive.optional(),
    status: z.enum(['seen', 'from memory', 'derived', 'common practice', 'own entry']),
    source: z.string().min(1),
  })
  .refine(limit => limit.least !== undefined || limit.most !== undefined, {
    ...acceptingKey('rules.leastOrMost'),
    path: ['least'],
  })
  .refine(limit => limit.least === undefined || limit.most === undefined || limit.least <= limit.most, {
    ...acceptingKey('rules.leastUpToMost'),
    path: ['least'],
  });

export const editionSchema = z.object({
  format: z.literal('turnwright.rules'),
  version: z.literal(1),
  /** The edition's label, for example the season. */
  edition: z.string().min(1),
  notes: z.string().optional(),
  limits: z.array(limitSchema).min(1),
});

export type Edition = z.infer<typeof editionSchema>;
export type Limit = Edition['limits'][number];
