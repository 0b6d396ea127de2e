/**
 * Skiers with a hill and a rhythm that suit them: where a demonstration begins. Our own choice, found by running the
 * demo pairs: no edge slips, and past 10° of edge there is grip to spare all the way down. They are no norm of an
 * age and no advice.
 */

import { type Said, USUAL } from '../conditions/index.ts';
import { DEGREE } from '../units/index.ts';

export type PresetId = 'junior-slalom' | 'junior-giant-slalom' | 'senior-slalom' | 'senior-giant-slalom';

/** What a preset says; everything else stays as it is. */
export type PresetConditions = Pick<
  Said,
  | 'massKg'
  | 'heightM'
  | 'slopeDeg'
  | 'speedKmh'
  | 'edgeDeg'
  | 'periodS'
  | 'gateSpacingM'
  | 'gateOffsetM'
  | 'clearanceM'
  | 'pushBodyWeights'
>;

export interface SkierPreset {
  readonly id: PresetId;
  readonly discipline: 'SL' | 'GS';
  readonly status: 'own choice';
  readonly conditions: PresetConditions;
}

/** The first is the usual skier. */
export const SKIER_PRESETS: readonly SkierPreset[] = [
  {
    id: 'junior-slalom',
    discipline: 'SL',
    status: 'own choice',
    conditions: {
      massKg: USUAL.massKg,
      heightM: USUAL.heightM,
      slopeDeg: USUAL.slopeDeg,
      speedKmh: USUAL.speedKmh,
      edgeDeg: USUAL.edgeDeg,
      periodS: USUAL.periodS,
      gateSpacingM: USUAL.gateSpacingM,
      gateOffsetM: USUAL.gateOffsetM,
      clearanceM: USUAL.clearanceM,
      pushBodyWeights: USUAL.pushBodyWeights,
    },
  },
  {
    id: 'junior-giant-slalom',
    discipline: 'GS',
    status: 'own choice',
    conditions: {
      massKg: 55,
      heightM: 1.65,
      slopeDeg: 7,
      speedKmh: 30,
      edgeDeg: 45,
      periodS: 2.2,
      gateSpacingM: 20,
      gateOffsetM: 5,
      clearanceM: 0.5,
      pushBodyWeights: 2.5,
    },
  },
  {
    id: 'senior-slalom',
    discipline: 'SL',
    status: 'own choice',
    conditions: {
      massKg: 80,
      heightM: 1.78,
      slopeDeg: 9,
      speedKmh: 26,
      edgeDeg: 60,
      periodS: 1.6,
      gateSpacingM: 10,
      gateOffsetM: 3.2,
      clearanceM: 0.3,
      pushBodyWeights: 3,
    },
  },
  {
    id: 'senior-giant-slalom',
    discipline: 'GS',
    status: 'own choice',
    conditions: {
      massKg: 80,
      heightM: 1.78,
      slopeDeg: 7,
      speedKmh: 40,
      edgeDeg: 55,
      periodS: 2.2,
      gateSpacingM: 25,
      gateOffsetM: 8,
      clearanceM: 0.5,
      pushBodyWeights: 3,
    },
  },
];

/** Edge angle over which grip is judged, rad: under it the skis change sides. Our own choice. */
export const GRIP_FROM = 10 * DEGREE;
