/**
 * What a run is made of, and the checks on it.
 */

import {
  acceptConditions,
  type FieldOf,
  fieldsOf,
  inSi,
  type SiOf,
  type SiOfGroup,
  USUAL,
} from '../conditions/index.ts';
import { accept } from '../fault/index.ts';
import { acceptLegSpan, type LegSpan, legSpanOf } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';
import type { Programme } from './edge-programme.ts';
import type { SlopeProfile } from './slope-profile.ts';
import type { CarvedTurn } from './turn-radius.ts';

const USUAL_FIELDS = fieldsOf('model', 'legs');
const CHECKED = [...USUAL_FIELDS, ...fieldsOf('glide', 'legSpan'), 'massKg', 'speedKmh'] as const;

/**
 * Skier, snow and air, and how a slipping edge and the legs are taken, which are as usual unless given: see
 * core/conditions. SI, rad.
 */
export interface RunConditions
  extends SiOf<FieldOf<'glide'> | 'massKg' | 'speedKmh'>,
    Partial<SiOfGroup<'model' | 'legs'>>,
    Partial<LegSpan> {
  readonly turn: CarvedTurn;
  readonly profile: SlopeProfile;
  readonly programme: Programme;
  /**
   * Angle of the first direction from the fall line, rad, positive to the right. Left out: banked turns start on
   * their traverse, linked turns half a first turn before the fall line, others straight down.
   */
  readonly startHeading?: number;
  /** Base bevel b, rad; 0 unless given. */
  readonly baseBevel?: number;
  /** Edge in the snow, m, whose ends slip most where the path is not the ski's own; 1.4 unless given. */
  readonly contactLength?: number;
  /** Strength S of the wall the edge leans on, N/m²; Infinity unless given: it bears everything. */
  readonly wallStrength?: number;
}

export interface RunOptions {
  /** Time between rows of the track, s; 0.01 unless given. */
  readonly outputStep?: number;
  /** Time between the nodes the run is solved at, s; 0.02 unless given, 0.04 of a draft. */
  readonly step?: number;
  /** The skier may drop in at the start: the leg's speed is free there. */
  readonly dropIn?: boolean;
  /**
   * A first look, while a slider moves: fewer nodes, and a barrier and a correction that leave speeds a few per mille
   * and peak loads a few per cent open. The run says so.
   */
  readonly draft?: boolean;
  /** A share from 0 to 1 of the work done. */
  readonly onProgress?: (share: number) => void;
  readonly cancelled?: () => boolean;
}

/** Least push in body weights: the skis stay on the snow. */
export const LEAST_PUSH = 0.1;

/** Where between its shortest and its longest a leg would rather be. */
const REST = 0.75;

/** Conditions with every default filled in. */
export type FullConditions = Required<Omit<RunConditions, 'startHeading'>> &
  Pick<RunConditions, 'startHeading'> & {
    /** Length the leg would rather have, m. */
    readonly legRest: number;
  };

/** @throws FieldError for a condition out of range */
export function fillConditions(given: RunConditions): FullConditions {
  const full = {
    baseBevel: 0,
    contactLength: 1.4,
    wallStrength: Number.POSITIVE_INFINITY,
    ...inSi(USUAL, USUAL_FIELDS),
    ...legSpanOf({}),
    ...dropUndefined(given),
  };
  acceptConditions(full, CHECKED);
  acceptLegSpan(full);
  accept('baseBevel', full.baseBevel, { from: 0, to: 5 * DEGREE, quantity: 'angle' });
  accept('contactLength', full.contactLength, { from: 0.3, to: 3, quantity: 'skiLength' });
  accept('wallStrength', full.wallStrength, { from: 1e3, to: Infinity, unit: 'N/m²' });
  if (full.startHeading !== undefined)
    accept('startHeading', full.startHeading, { from: -Math.PI, to: Math.PI, quantity: 'angle' });
  return { ...full, legRest: full.legShortest + REST * (full.legLongest - full.legShortest) };
}

function dropUndefined(given: RunConditions): RunConditions {
  return Object.fromEntries(
    Object.entries(given).filter(([, v]) => v !== undefined),
  ) as unknown as RunConditions;
}
