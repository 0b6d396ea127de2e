/**
 * What a skier can do. SI, rad; forces in body weights (m g). Usual values are common practice unless a source is
 * named.
 */

import { FieldError } from '../fault/index.ts';
import { accept } from './accept.ts';

export interface Skier {
  /** With equipment, kg. */
  readonly mass: number;
  /** Shortest and longest leg, skis to centre of mass, m. */
  readonly legShortest: number;
  readonly legLongest: number;
  /** Greatest speed of folding and stretching, m/s. */
  readonly legSpeed: number;
  /** Greatest push, body weights. */
  readonly pushMost: number;
  /** Greatest change of the push, body weights a second. */
  readonly pushRate: number;
  /** Greatest edge angle, rad; its greatest rate, rad/s. */
  readonly edgeMost: number;
  readonly edgeRate: number;
  /** Greatest difference of edge angle and lean, rad. */
  readonly angulationMost: number;
  /** C_dA, m². */
  readonly dragArea: number;
}

const DEGREE = Math.PI / 180;

/**
 * A strong racer. Push: peaks up to 5 body weights were measured (Supej & Holmberg, Front. Physiol. 10 (2019), seen);
 * edge angle: 65.7 ± 1.7° and 71.0 ± 1.9° in slalom (Reid et al. 2020, seen).
 */
export const USUAL_SKIER: Skier = {
  mass: 80,
  legShortest: 0.65,
  legLongest: 1,
  legSpeed: 1,
  pushMost: 3,
  pushRate: 12,
  edgeMost: 70 * DEGREE,
  edgeRate: 8,
  angulationMost: 40 * DEGREE,
  dragArea: 0.45,
};

/** The skis stay on the snow: least push in an optimum, body weights. */
export const LEAST_PUSH = 0.1;

/** How much further than the shelf's own angle the snow's force may lean before the shelf lets go, rad. */
export const SHELF_ALLOWANCE = DEGREE;

/** Bounds of a path that is not the ski's own: mismatch 1/m and its rate 1/(m s), drift rad and its rate rad/s. */
export const MISMATCH_MOST = 0.15;
export const MISMATCH_RATE = 2;
export const DRIFT_MOST = 0.6;
export const DRIFT_RATE = 4;

const RANGES: Readonly<Record<keyof Skier, readonly [low: number, high: number, unit: string]>> = {
  mass: [20, 250, 'kg'],
  legShortest: [0.3, 1.2, 'm'],
  legLongest: [0.4, 1.4, 'm'],
  legSpeed: [0.1, 5, 'm/s'],
  pushMost: [1.1, 8, 'body weights'],
  pushRate: [1, 100, 'body weights/s'],
  edgeMost: [10 * DEGREE, 85 * DEGREE, 'rad'],
  edgeRate: [1, 30, 'rad/s'],
  angulationMost: [5 * DEGREE, 70 * DEGREE, 'rad'],
  dragArea: [0, 3, 'm²'],
};

/** @throws FieldError naming the field, the value found and what is accepted */
export function acceptSkier(skier: Skier): void {
  for (const [field, [low, high, unit]] of Object.entries(RANGES)) {
    accept(field, skier[field as keyof Skier], unit, low, high);
  }
  if (!(skier.legLongest >= skier.legShortest + 0.02)) {
    throw new FieldError({
      field: 'legLongest',
      found: { quantity: 'bodyLength', value: skier.legLongest },
      accepted: { from: skier.legShortest + 0.02, quantity: 'bodyLength' },
    });
  }
}
