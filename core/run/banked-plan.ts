/**
 * How banked turns on a leg are set out. The skis are tilted as the leg leans, at every instant; a turn runs from
 * one traverse to the other, and on the traverse the skis lie flat while the mass falls across them. How long each
 * turn takes is found with the rest: places count turns, and a state that may change only where a turn begins says
 * how many seconds one takes.
 */

import type { ChainGuess } from '../numeric/index.ts';
import { BITE } from '../skier/index.ts';
import { type PointTurns, pointTurns } from './banked-guess.ts';
import type { BankedProgramme } from './edge-programme.ts';
import { type RunPlan, slopeOf, valueAt } from './edged-plan.ts';
import { balancedPush, swungLean } from './first-guess.ts';
import type { FullConditions } from './run-conditions.ts';
import { HEADING, LEAN, LEAN_RATE, LEG, MISMATCH, PUSH, type RunShape, SPEED } from './run-formula.ts';
import type { SmoothGround } from './smooth-ground.ts';
import { startHeading } from './start-heading.ts';

const WITHIN = 0.9;
/** Stages a turn has at least. */
const FEWEST = 12;
/** Lean of the guess where a point on the skis has none that balances, rad: on a leg there may be one. */
const MOST_LEAN = 1.2;

export function bankedPlan(
  run: FullConditions,
  programme: BankedProgramme,
  shape: RunShape,
  ground: SmoothGround,
  step: number,
  dropIn: boolean,
  like?: readonly number[],
): RunPlan {
  const heading = startHeading(run);
  const point = pointTurns(run, programme, ground, heading, MOST_LEAN);
  const { turns } = point;
  const stopped = point.end === 'stopped';
  // A turn begun and not ended is left out.
  const count = turns.length - 1;
  const wished = Array.from({ length: count }, (_, i) =>
    Math.max(FEWEST, Math.ceil(((turns[i + 1] - turns[i]) * point.step) / step)),
  );
  const parts = like?.length === count ? like : wished;
  const nodes = [0];
  const traverses = new Map<number, number>();
  const begins = new Set<number>([0]);
  const side = programme.first === 'right' ? 1 : -1;
  for (const [i, n] of parts.entries()) {
    for (let k = 1; k <= n; k++) nodes.push(i + k / n);
    traverses.set(nodes.length - 1, (i % 2 === 0 ? side : -side) * programme.traverse);
    begins.add(nodes.length - 1);
  }
  const rowAt = (place: number) => {
    const i = Math.min(count - 1, Math.floor(place));
    return turns[i] + (place - i) * (turns[i + 1] - turns[i]);
  };
  const places = Float64Array.from(nodes);
  return {
    nodes: places,
    parts,
    ends: { heading, flatStart: true, flatEnd: true, dropIn, traverses, begins },
    ...(count === 0 && {
      none: { limit: stopped ? 'speed' : 'heading', at: point.speed.length * point.step },
    }),
    end: stopped ? 'stopped' : 'programme over',
    edgeAt: () => 0,
    turnsAt: place => Math.min(count, Math.floor(place + 1e-9) + 1),
    timeAt: place => (count > 0 ? rowAt(place) * point.step : 0),
    guess: () => guess(run, shape, point, places, rowAt),
  };
}

function guess(
  run: FullConditions,
  shape: RunShape,
  point: PointTurns,
  nodes: Float64Array,
  rowAt: (place: number) => number,
): ChainGuess {
  const n = shape.states.length;
  const m = shape.controls.length;
  const lean = swungLean(point.step, point.normal, point.sideways, run.legRest, true, true);
  const rate = slopeOf(lean, point.step);
  const x = new Float64Array(nodes.length * n);
  const u = new Float64Array((nodes.length - 1) * m);
  const six = new Float64Array(6);
  for (let k = 0; k < nodes.length; k++) {
    const at = rowAt(nodes[k]);
    const i = Math.min(lean.length - 1, Math.round(at));
    const c = k * n;
    x[c + HEADING] = valueAt(point.heading, at);
    x[c + SPEED] = valueAt(point.speed, at);
    x[c + LEAN] = valueAt(lean, at);
    x[c + LEAN_RATE] = rate(i);
    x[c + LEG] = run.legRest;
    x[c + PUSH] = Math.min(
      WITHIN * run.pushMost,
      balancedPush(point.sideways[i], point.normal[i], lean[i], rate(i), run.legRest),
    );
    if (shape.down >= 0) x[c + shape.down] = valueAt(point.down, at);
    const turn = Math.min(nodes[nodes.length - 1] - 1, Math.floor(nodes[k] + 1e-9));
    x[c + shape.pace] = (rowAt(turn + 1) - rowAt(turn)) * point.step;
  }
  for (let k = 0; k + 1 < nodes.length; k++) {
    const at = rowAt(0.5 * (nodes[k] + nodes[k + 1]));
    const tilt = valueAt(lean, at);
    run.turn.curvature(tilt, run.outerShare * run.mass * 10, six);
    u[k * m + MISMATCH] = Math.max(
      -0.1,
      Math.min(0.1, valueAt(point.curvature, at) - Math.tanh(tilt / BITE) * six[0]),
    );
    const step = nodes[k + 1] - nodes[k];
    u[k * m + shape.paceRate] = (x[(k + 1) * n + shape.pace] - x[k * n + shape.pace]) / step;
  }
  return { x, u };
}
