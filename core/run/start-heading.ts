/**
 * Which way the skier sets off. Linked turns of equal angle swing evenly about the fall line only when the first
 * one begins half its own angle before it.
 */

import { BITE, GRAVITY } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';
import type { FullConditions } from './run-conditions.ts';

const STEEPEST_START = 85 * DEGREE;
const SAMPLES = 200;

/** First heading, rad from the fall line; what the conditions say, or the rule for their programme. */
export function startHeading(run: FullConditions): number {
  if (run.startHeading !== undefined) return run.startHeading;
  const { programme } = run;
  if (programme.kind === 'banked')
    return programme.first === 'right' ? -programme.traverse : programme.traverse;
  const { changeovers, end } = programme;
  if (changeovers.length < 2) return 0;
  const from = changeovers[0];
  const to = changeovers[1] ?? end;
  const pace = programme.per === 'time' ? run.startSpeed : 1;
  const load = run.outerShare * run.mass * GRAVITY;
  let turned = 0;
  for (let i = 0; i < SAMPLES; i++) {
    const edge = programme.edge(from + ((to - from) * (i + 0.5)) / SAMPLES);
    turned +=
      (Math.tanh(edge / BITE) * pace * (to - from)) / (SAMPLES * run.turn.radius(Math.abs(edge), load));
  }
  return Math.min(STEEPEST_START, Math.max(-STEEPEST_START, -0.5 * turned));
}
