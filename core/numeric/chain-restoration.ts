import type { ChainIterate } from './chain-iterate.ts';
import type { NewtonStep } from './newton-step.ts';
import type { StepFilter } from './step-filter.ts';

/** Steps at most, and the shortest share of one. */
const MOST_STEPS = 60;
const SHORTEST_SHARE = 1e-8;
const TO_BOUND = 0.99;
/** Share of the promised gain that a step must bring. */
const GAIN = 1e-4;
/** Where the violation has fallen to this share, the objective may lead again. */
const ENOUGH = 0.9;
/** A violation under this is none: restored whatever the filter says. */
const NONE = 1e-9;

/**
 * Reduces the violation alone, by shortest steps, until the filter allows the point; false when no step does.
 * Multipliers begin anew after it.
 */
export function restore(iterate: ChainIterate, step: NewtonStep, filter: StepFilter, mu: number): boolean {
  const first = iterate.measure(mu).violation;
  let now = first;
  for (let count = 0; count < MOST_STEPS; count++) {
    if (!step.findShortest(mu)) return false;
    let alpha = iterate.reach(TO_BOUND);
    while (!(iterate.tryStep(alpha, mu).violation <= (1 - GAIN * alpha) * now)) {
      alpha *= 0.5;
      if (!(alpha > SHORTEST_SHARE)) return false;
    }
    iterate.takeTrial();
    const measure = iterate.measure(mu);
    now = measure.violation;
    if (now < NONE || (now <= ENOUGH * first && filter.allows(measure))) {
      iterate.forgetMultipliers(mu);
      return true;
    }
  }
  return false;
}
