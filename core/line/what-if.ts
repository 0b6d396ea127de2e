/** What other conditions would make of a solved time, to first order: the answer at once, before it is solved anew. */

import type { Inputs } from './realistic-changes.ts';
import type { RankingQuestion } from './set-ranking.ts';
import type { SkiWorth } from './ski-changes.ts';

type Asked = Pick<RankingQuestion, 'conditions' | 'startSpeed'>;

/** Inputs of the skier, and those of the conditions themselves. */
const SKIER = [
  'mass',
  'dragArea',
  'pushMost',
  'pushRate',
  'legSpeed',
  'legLongest',
  'legShortest',
  'edgeMost',
  'edgeRate',
  'angulationMost',
] as const;
const PLAIN = ['friction', 'airDensity', 'scrape', 'clearance'] as const;

/**
 * Seconds that `to` brings over `from`, both for the same gates and ski, by the slopes of the solved time.
 *
 * @param hardness of the snow before and after, N/m³
 */
export function whatIf(
  { inputs, skiWorths }: { readonly inputs: Inputs; readonly skiWorths: readonly SkiWorth[] },
  from: Asked,
  to: Asked,
  hardness: readonly [from: number, to: number],
): number {
  const before = from.conditions;
  const after = to.conditions;
  let seconds = (inputs.startSpeed ?? 0) * (to.startSpeed - from.startSpeed);
  for (const input of SKIER) seconds += inputs[input] * (after.skier[input] - before.skier[input]);
  for (const input of PLAIN) seconds += inputs[input] * (after[input] - before[input]);
  const slope = ({ slope: { sine } }: typeof before) => Math.asin(sine(0));
  seconds += inputs.slope * (slope(after) - slope(before));
  const wall = after.wallStrength - before.wallStrength;
  if (Number.isFinite(wall)) seconds += inputs.wallStrength * wall;
  const doubled = skiWorths.find(({ change }) => change === 'hardness')?.seconds ?? 0;
  return seconds + doubled * Math.log2(hardness[1] / hardness[0]);
}
