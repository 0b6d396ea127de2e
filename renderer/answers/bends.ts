import { computed } from '@preact/signals';
import type { CarveConditions, CarveFailure, Equilibrium } from '../../core/carve/index.ts';
import { inSi, USUAL } from '../../core/conditions/index.ts';
import type { Track } from '../../core/run/index.ts';
import { DEGREE } from '../../core/units/index.ts';
import { conditions, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { carvingOf } from './radius-tables.ts';
import { ghostPair, leadPair } from './run-question.ts';

const EDGES = [3, 12, 22, 32, 42, 51, 59, 66, 72].map(deg => deg * DEGREE);
const LOADS = [200, 500, 1000, 2000, 4000];

/** The few equilibria a run's bends are drawn from, neighbours side by side. Hardness N/m³. */
export function bendQuestions(hardness: number, fore: number): CarveConditions[] {
  return LOADS.flatMap((load, j) => {
    const row = EDGES.map(edgeAngle => ({ edgeAngle, load, hardness, fore }));
    // Back and forth, so that each starts from its neighbour.
    return j % 2 === 0 ? row : row.reverse();
  });
}

/** A ski bent into its groove, m and rad over stations from the rear contact point. */
export interface Bend {
  readonly x: Float64Array;
  readonly height: Float64Array;
  readonly twist: Float64Array;
  readonly penetration: Float64Array;
}

/** Solved bends over edge angle and load; null when one of them failed. */
export interface BendTable {
  at(edge: number, load: number): Bend;
}

/** @param answers in the order of `bendQuestions` */
export function bendTable(answers: readonly (Equilibrium | CarveFailure)[]): BendTable | null {
  const grid: Equilibrium[] = new Array(EDGES.length * LOADS.length);
  for (const answer of answers) {
    if (!answer.ok) return null;
    const i = nearest(EDGES, answer.conditions.edgeAngle);
    const j = nearest(LOADS, answer.conditions.load);
    grid[i * LOADS.length + j] = answer;
  }
  if (answers.length !== grid.length) return null;
  const { x } = grid[0]!;
  const n = x.length;
  // Written in place: a picture sixty times a second must leave nothing behind.
  const bend = {
    x,
    height: new Float64Array(n),
    twist: new Float64Array(n),
    penetration: new Float64Array(n),
  };
  return {
    at(edge, load) {
      const i = cell(EDGES, edge);
      const j = cell(LOADS, load);
      const s = share(EDGES, i, edge);
      const t = share(LOADS, j, load);
      const a = grid[i * LOADS.length + j]!;
      const b = grid[i * LOADS.length + j + 1]!;
      const c = grid[(i + 1) * LOADS.length + j]!;
      const d = grid[(i + 1) * LOADS.length + j + 1]!;
      for (let k = 0; k < n; k++) {
        bend.height[k] = mixed(a.height[k]!, b.height[k]!, c.height[k]!, d.height[k]!, s, t);
        bend.twist[k] = mixed(a.twist[k]!, b.twist[k]!, c.twist[k]!, d.twist[k]!, s, t);
        bend.penetration[k] = mixed(
          a.penetration[k]!,
          b.penetration[k]!,
          c.penetration[k]!,
          d.penetration[k]!,
          s,
          t,
        );
      }
      return bend;
    },
  };
}

const hardness = computed(() => inSi(conditions.value, ['hardnessNPerMm3']).hardness);
const fore = computed(() => inSi(conditions.value, ['foreMm']).fore);

function bendsOf(of: typeof leadPair) {
  const question = computed(() => {
    const pair = of.value?.pair;
    if (!pair || !carvingOf(pair).ok) return null;
    return { pair, conditions: bendQuestions(hardness.value, fore.value) };
  });
  const solved = answer('groove', {
    label: () => t('answers.bends'),
    question: () => question.value,
  });
  const answers = computed(() => solved.value.value);
  return computed(() => answers.value && bendTable(answers.value));
}

/** Bends of the pairs on the hill, lead and ghost; null until they are solved. */
export const hillBends = [bendsOf(leadPair), bendsOf(ghostPair)] as const;

/** The bend at a row of a track, for the scene. */
export const bendAlong =
  (table: BendTable, track: Track) =>
  (row: number): Bend =>
    table.at(Math.abs(track.edge[row]!), USUAL.outerShare * track.load[row]!);

function mixed(a: number, b: number, c: number, d: number, s: number, t: number): number {
  return (1 - s) * ((1 - t) * a + t * b) + s * ((1 - t) * c + t * d);
}

function cell(axis: readonly number[], value: number): number {
  let i = 0;
  while (i < axis.length - 2 && value >= axis[i + 1]!) i++;
  return i;
}

function share(axis: readonly number[], i: number, value: number): number {
  return Math.min(1, Math.max(0, (value - axis[i]!) / (axis[i + 1]! - axis[i]!)));
}

function nearest(axis: readonly number[], value: number): number {
  let best = 0;
  for (let i = 1; i < axis.length; i++) {
    if (Math.abs(axis[i]! - value) < Math.abs(axis[best]! - value)) best = i;
  }
  return best;
}
