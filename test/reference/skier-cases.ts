/** The skier of the trial rows, and how their numbers are compared. */
import { expect } from 'vitest';
import { type Run, type RunConditions, type RunOptions, solveRun } from '../../core/run/index.ts';

export const RAD = Math.PI / 180;

export const SKIER = {
  mass: 75,
  friction: 0.05,
  dragArea: 0.4,
  airDensity: 1.1,
  contactLength: 1.36,
  legShortest: 0.6,
  legLongest: 1,
};

export function solved(conditions: RunConditions, options?: RunOptions, from?: Run): Run {
  const run = solveRun(conditions, options, from);
  if (!run.ok) throw new Error(run.limit);
  return run;
}

/** Within a share, or within what the last printed figure leaves open. */
export function near(found: number, expected: number, share: number, rounding: number): void {
  expect(Math.abs(found - expected)).toBeLessThan(Math.max(share * Math.abs(expected), rounding));
}
