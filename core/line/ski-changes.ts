/**
 * Realistic changes of a ski and its snow, and what each is worth on a solved line: the changed ski is bent into its
 * groove at the edge angles and loads of the line itself, and the line's slopes tell what the other curvature brings.
 */

import { type CarvingSki, carvingSkiOf, type Equilibrium, grooveSolver } from '../carve/index.ts';
import type { Ski } from '../pair/index.ts';
import { BITE, type GrooveWall, type OwnCurvature } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';
import type { GrooveWorth } from './worth.ts';

/** A ski in its groove. */
export interface GrooveCase {
  readonly ski: CarvingSki;
  /** H_V, N/m³. */
  readonly hardness: number;
  /** m; the usual one when absent. */
  readonly rebound?: number;
}

/** What is changed, in the unit it is told in. */
export type SkiChange =
  | 'tipWidth'
  | 'waistWidth'
  | 'tailWidth'
  | 'bendingStiffness'
  | 'torsionalStiffness'
  | 'hardness';

/** A change as told: half a millimetre of width, a tenth of the stiffness, twice the hardness. */
const SKI_CHANGES: readonly {
  readonly change: SkiChange;
  readonly by: number;
  readonly unit: string;
}[] = [
  { change: 'tipWidth', by: 0.5, unit: 'mm' },
  { change: 'waistWidth', by: 0.5, unit: 'mm' },
  { change: 'tailWidth', by: 0.5, unit: 'mm' },
  { change: 'bendingStiffness', by: 10, unit: '%' },
  { change: 'torsionalStiffness', by: 10, unit: '%' },
  { change: 'hardness', by: 100, unit: '%' },
];

/** Places of the line at which grooves are solved; the change of curvature is joined by straight lines between. */
const PLACES = 14;
/** A ski flatter or lighter than this does not say what its groove is, rad and N. */
const LEAST_EDGE = 6 * DEGREE;
const LEAST_LOAD = 150;

/** What one of these changes is worth on a line. */
export interface SkiWorth {
  readonly change: SkiChange;
  readonly by: number;
  readonly unit: string;
  /** Negative is quicker. */
  readonly seconds: number;
}

/** What each change of a ski in its groove is worth; without those that cannot be made or solved. */
export function skiWorths(
  ski: Ski,
  own: OwnCurvature & GrooveWall,
  groove: GrooveCase,
  worth: GrooveWorth,
): SkiWorth[] {
  return SKI_CHANGES.flatMap(({ change, by, unit }) => {
    const changed = changedCase(ski, groove, change, by);
    const seconds = changed && worthOfGroove(worth, own, groove, changed);
    return seconds === null ? [] : [{ change, by, unit, seconds }];
  });
}

/** The changed ski; null where the pair has nothing to change (a ski rigid in torsion) or cannot be bent. */
function changedCase(ski: Ski, from: GrooveCase, change: SkiChange, by: number): GrooveCase | null {
  switch (change) {
    case 'hardness':
      return { ...from, hardness: from.hardness * (1 + by / 100) };
    case 'bendingStiffness': {
      const { bending } = from.ski;
      return { ...from, ski: { ...from.ski, bending: x => bending(x) * (1 + by / 100) } };
    }
    case 'torsionalStiffness': {
      const { torsion } = from.ski;
      return torsion && { ...from, ski: { ...from.ski, torsion: x => torsion(x) * (1 + by / 100) } };
    }
    default: {
      const answer = carvingSkiOf(widened(ski, change, by / 1000));
      return answer.ok ? { ...from, ski: answer.ski } : null;
    }
  }
}

/** A width changed by `by` m, and the measured ones between as the parabola through tail, waist and tip has it. */
function widened(ski: Ski, which: 'tipWidth' | 'waistWidth' | 'tailWidth', by: number): Ski {
  const L = ski.contactLength;
  const waist = ski.waistStation ?? L / 2;
  const at = { tailWidth: 0, waistWidth: waist, tipWidth: L };
  const others = Object.values(at).filter(x => x !== at[which]);
  const share = (x: number) => others.reduce((product, o) => (product * (x - o)) / (at[which] - o), 1);
  return {
    ...ski,
    [which]: ski[which] + by,
    widthStations: ski.widthStations?.map(({ x, width }) => ({ x, width: width + by * share(x) })) ?? null,
  };
}

/**
 * Seconds that the changed groove brings on the line; null where one of them cannot be solved. Both grooves are
 * solved at the same places, so that their difference is not that of a table to a solution.
 */
function worthOfGroove(
  worth: GrooveWorth,
  own: OwnCurvature & GrooveWall,
  from: GrooveCase,
  to: GrooveCase,
): number | null {
  const stages = worth.seconds.length;
  const reported = Array.from({ length: stages }, (_, k) => k).filter(
    k => Math.abs(worth.edge[k]) > LEAST_EDGE && worth.load[k] > LEAST_LOAD,
  );
  if (reported.length === 0) return null;
  const every = Math.max(1, (reported.length - 1) / (PLACES - 1));
  const places = [...new Set(Array.from({ length: PLACES }, (_, i) => Math.round(i * every)))]
    .map(i => reported[i])
    .filter(k => k !== undefined);
  const before = grooves(from, worth, places);
  const after = grooves(to, worth, places);
  if (!before || !after) return null;
  const bent = before.map(({ turnRadius }, i) => turnRadius / after[i].turnRadius - 1);
  const deeper = before.map(({ wallArea }, i) => after[i].wallArea / wallArea - 1);
  const six = new Float64Array(6);
  let sum = 0;
  for (let k = 0; k < stages; k++) {
    own.curvature(worth.edge[k], worth.load[k], six);
    sum += worth.seconds[k] * Math.tanh(worth.edge[k] / BITE) * six[0] * between(places, bent, k);
  }
  const { wall } = worth;
  for (let node = 0; node < wall.seconds.length; node++) {
    own.wallArea(wall.edge[node], wall.load[node], six);
    sum += wall.seconds[node] * six[0] * between(places, deeper, node - 0.5);
  }
  return sum;
}

function grooves({ ski, hardness, rebound }: GrooveCase, worth: GrooveWorth, places: readonly number[]) {
  const solver = grooveSolver(ski);
  const found: Equilibrium[] = [];
  for (const k of places) {
    const conditions = {
      edgeAngle: Math.abs(worth.edge[k]),
      load: worth.load[k],
      hardness,
      fore: 0,
      rebound,
    };
    const answer = solver.solve(conditions);
    if (!answer.ok) return null;
    found.push(answer);
  }
  return found;
}

function between(places: readonly number[], values: readonly number[], at: number): number {
  const next = places.findIndex(place => place >= at);
  if (next < 0) return values[values.length - 1];
  if (next === 0) return values[0];
  const share = (at - places[next - 1]) / (places[next] - places[next - 1]);
  return values[next - 1] + share * (values[next] - values[next - 1]);
}
