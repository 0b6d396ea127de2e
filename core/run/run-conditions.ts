/**
 * What a run is made of, and the checks on it.
 */

import { accept } from '../skier/index.ts';
import type { Programme } from './edge-programme.ts';
import type { SlopeProfile } from './slope-profile.ts';
import type { CarvedTurn } from './turn-radius.ts';

export interface RunConditions {
  readonly turn: CarvedTurn;
  readonly profile: SlopeProfile;
  readonly programme: Programme;
  /** Skier with equipment, kg. */
  readonly mass: number;
  /** Coefficient of friction ski on snow. */
  readonly friction: number;
  /** C_dA, m². */
  readonly dragArea: number;
  /** kg/m³. */
  readonly airDensity: number;
  /** m/s. */
  readonly startSpeed: number;
  /**
   * Angle of the first direction from the fall line, rad, positive to the right. Left out: banked turns start on
   * their traverse, linked turns half a first turn before the fall line, others straight down.
   */
  readonly startHeading?: number;
  /** Base bevel b, rad; 0 unless given. */
  readonly baseBevel?: number;
  /** Edge in the snow, m, whose ends slip most where the path is not the ski's own; 1.4 unless given. */
  readonly contactLength?: number;
  /** Part of the load on the outer ski; 0.7 unless given (60–80 %, from memory). */
  readonly outerShare?: number;
  /** σ: how much of the load a ski takes that slips at an angle, over that angle; 1 unless given (our own law). */
  readonly scrape?: number;
  /** Strength S of the wall the edge leans on, N/m²; Infinity unless given: it bears everything. */
  readonly wallStrength?: number;
  /** Shortest and longest leg, skis to the mass, m; 0.6 and 1 unless given (common practice). */
  readonly legMin?: number;
  readonly legMax?: number;
  /** Fastest folding and stretching, m/s; 1.5 unless given (common practice). */
  readonly legSpeed?: number;
  /** Greatest push of the leg, body weights; 8 unless given. */
  readonly pushMax?: number;
  /** Fastest change of the push, body weights a second; 12 unless given. */
  readonly pushRate?: number;
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

/** Part of the load on the outer ski unless given (60–80 %, from memory). */
export const OUTER_SHARE = 0.7;

/** Least push in body weights: the skis stay on the snow. */
export const LEAST_PUSH = 0.1;

/** Usual limits of the leg (common practice). */
export const USUAL_LEG = { legMin: 0.6, legMax: 1, legSpeed: 1.5, pushMax: 8, pushRate: 12 } as const;

/** Where between its shortest and its longest a leg would rather be. */
const REST = 0.75;

/** Conditions with every default filled in. */
export type FullConditions = Required<Omit<RunConditions, 'startHeading'>> &
  Pick<RunConditions, 'startHeading'> & {
    /** Length the leg would rather have, m. */
    readonly legRest: number;
  };

/** @throws RangeError naming the field, the value found and what is accepted */
export function fillConditions(given: RunConditions): FullConditions {
  const full = {
    baseBevel: 0,
    contactLength: 1.4,
    outerShare: OUTER_SHARE,
    scrape: 1,
    wallStrength: Number.POSITIVE_INFINITY,
    ...USUAL_LEG,
    ...dropUndefined(given),
  };
  accept('mass', full.mass, 'kg', 10, 500);
  accept('friction', full.friction, '', 0, 1);
  accept('dragArea', full.dragArea, 'm²', 0, 5);
  accept('airDensity', full.airDensity, 'kg/m³', 0, 2);
  accept('startSpeed', full.startSpeed, 'm/s', 0.5, 80);
  accept('baseBevel', full.baseBevel, 'rad', 0, 0.2);
  accept('contactLength', full.contactLength, 'm', 0.3, 3);
  accept('outerShare', full.outerShare, '', 0.1, 1);
  accept('scrape', full.scrape, '', 0, 10);
  accept('wallStrength', full.wallStrength, 'N/m²', 1e3, Number.POSITIVE_INFINITY);
  accept('legMin', full.legMin, 'm', 0.01, 1.5);
  accept('legMax', full.legMax, 'm', 0.01, 1.5);
  if (!(full.legMax >= full.legMin + 1e-3)) {
    throw new RangeError(
      `legMax: ${full.legMax} m found with legMin ${full.legMin} m; a longest leg at least 0.001 m over the shortest is accepted`,
    );
  }
  accept('legSpeed', full.legSpeed, 'm/s', 0.01, 10);
  accept('pushMax', full.pushMax, 'body weights', 1.2, 20);
  accept('pushRate', full.pushRate, 'body weights/s', 0.5, 200);
  if (full.startHeading !== undefined) accept('startHeading', full.startHeading, 'rad', -Math.PI, Math.PI);
  return { ...full, legRest: full.legMin + REST * (full.legMax - full.legMin) };
}

function dropUndefined(given: RunConditions): RunConditions {
  return Object.fromEntries(
    Object.entries(given).filter(([, v]) => v !== undefined),
  ) as unknown as RunConditions;
}
