/**
 * What a set asks: gates far enough apart, and a start that may be at rest.
 */

import { accept, FieldError } from '../fault/index.ts';
import { GRAVITY } from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';

/** A turning pole: x across, positive to the right, y down the fall line, m; turn −1 to the left, +1 to the right. */
export interface TurningPole {
  readonly x: number;
  readonly y: number;
  readonly turn: 1 | -1;
}

export interface SetQuestion {
  readonly conditions: LineConditions;
  readonly poles: readonly TurningPole[];
  /** m/s at the start; 0 from rest. */
  readonly startSpeed: number;
  /** Greatest speed of the mass, m/s, where the skier keeps to a pace: what is faster is scraped away. */
  readonly pace?: number;
  /** A line drawn through the gates that the skis keep to, as closely as `within`, m. */
  readonly along?: {
    readonly points: readonly { readonly x: number; readonly y: number }[];
    readonly within: number;
  };
  /** Where the run starts; in the middle of the first two poles, as far above the first as the second is below. */
  readonly start?: { readonly x: number; readonly y: number };
  /** Where it ends; likewise below the last. Crossed anywhere along its line. */
  readonly finish?: { readonly x: number; readonly y: number };
}

/** Gates closer than this down the hill leave no turn between them, m; more than so many take minutes. */
const LEAST_DOWN = 1.5;
const MOST_GATES = 200;
/** Slower than this the skis run straight: the line begins at this speed, m/s (own choice, half a metre from rest). */
export const ROLLING = 1.5;

/** @throws FieldError for less than two gates, too many, or one that is not far enough down from the one before */
export function acceptGates(poles: readonly TurningPole[]): void {
  accept('gates', poles.length, { from: 2, to: MOST_GATES, whole: true });
  for (const [i, { y }] of poles.entries()) {
    const before = poles[i - 1];
    if (before && !(y - before.y >= LEAST_DOWN)) {
      throw new FieldError({
        field: `gates[${i + 1}]`,
        found: { quantity: 'distance', value: y },
        accepted: { from: before.y + LEAST_DOWN, quantity: 'distance' },
        because: {
          key: 'line.gateFurtherDown',
          values: { least: { quantity: 'distance', value: LEAST_DOWN } },
        },
      });
    }
  }
}

/** The speed the line itself begins at, m/s. */
export const lineSpeed = ({ startSpeed, pace = Infinity }: SetQuestion): number =>
  Math.min(Math.max(startSpeed, ROLLING), pace);

/** Seconds of the straight run that a start slower than the line can begin at takes. */
export const straightSeconds = (question: SetQuestion): number =>
  question.startSpeed < ROLLING ? (ROLLING - question.startSpeed) / straightPull(question) : 0;

/**
 * What a ski that runs straight from a start at rest gains, m/s².
 *
 * @throws FieldError where the slope is too gentle to set off on
 */
export function straightPull({ conditions, poles, startSpeed }: SetQuestion): number {
  const sine = conditions.slope.sine(poles[0].y);
  const pull = GRAVITY * (sine - conditions.friction * Math.sqrt(1 - sine * sine));
  if (pull > 0) return pull;
  throw new FieldError({
    field: 'startSpeed',
    found: startSpeed,
    accepted: { from: ROLLING, unit: 'm/s' },
    because: { key: 'line.tooGentleToStart' },
  });
}
