import { cosineTurnSurface } from '../../../core/carve/index.ts';
import type { LineConditions, RhythmQuestion } from '../../../core/line/index.ts';
import { evenSlope } from '../../../core/run/index.ts';
import { type Skier, skierOf } from '../../../core/skier/index.ts';

export const DEGREE = Math.PI / 180;

/** The skier of the reference tables; its limits beside those a trial names are the usual ones. */
export const REFERENCE_SKIER = skierOf({
  massKg: 80,
  legShortestM: 0.65,
  legLongestM: 1,
  pushBodyWeights: 3,
  dragAreaM2: 0.45,
});

/** A ski by the cosine rule and a skier whose limits the reference tables vary; everything else as they have it. */
export interface Trial {
  readonly sidecutRadius: number;
  readonly contactLength: number;
  readonly slopeDeg: number;
  readonly clearance: number;
  readonly pushMost: number;
  readonly legSpeed: number;
  readonly pushRate: number;
}

export function conditionsOf(trial: Trial, skier: Partial<Skier> = {}): LineConditions {
  const { sidecutRadius, contactLength, slopeDeg, clearance, pushMost, legSpeed, pushRate } = trial;
  return {
    ski: cosineTurnSurface(sidecutRadius),
    contactLength,
    baseBevel: 0,
    outerShare: 0.7,
    skier: { ...REFERENCE_SKIER, pushMost, legSpeed, pushRate, ...skier },
    friction: 0.05,
    scrape: 1,
    wallStrength: Number.POSITIVE_INFINITY,
    airDensity: 1.1,
    slope: evenSlope(slopeDeg * DEGREE),
    clearance,
  };
}

/** Slalom and giant slalom rhythms of the reference table's first and fourth row. */
export const SLALOM: Trial = {
  sidecutRadius: 12.5,
  contactLength: 1.4,
  slopeDeg: 19,
  clearance: 0.3,
  pushMost: 3,
  legSpeed: 1,
  pushRate: 12,
};
export const GIANT: Trial = {
  sidecutRadius: 30,
  contactLength: 1.6,
  slopeDeg: 12,
  clearance: 0.5,
  pushMost: 2.5,
  legSpeed: 0.7,
  pushRate: 10,
};

export const slalom = (conditions = conditionsOf(SLALOM)): RhythmQuestion => ({
  conditions,
  spacing: 10,
  offset: 3.2,
});
export const giant = (conditions = conditionsOf(GIANT)): RhythmQuestion => ({
  conditions,
  spacing: 25,
  offset: 8,
});
