/** A run told gate by gate: what each turn asks of ski and skier. */

import { GRIP_FROM } from '../skier/index.ts';
import { HELD_BACK_BY, type HeldBackBy, type LineRun } from './line-run.ts';

/** SI, rad; angles and grip towards the turn, so a right turn reads like a left one. */
export interface GateReading {
  /** At the pole, and from the pole before (from the start to the first). */
  readonly seconds: number;
  readonly split: number;
  /** Of the mass at the pole, m/s. */
  readonly speed: number;
  /** Least radius of the skis' path in this turn, m. */
  readonly radius: number;
  /** Greatest of this turn. */
  readonly edge: number;
  readonly lean: number;
  /** Body weights. */
  readonly load: number;
  /** Least grip to spare of the edged ski; NaN where it is never edged. */
  readonly grip: number;
  /** Greatest angle that the skis are turned across their path by drifting. */
  readonly drift: number;
  /** What holds the skier back longest in this turn. */
  readonly heldBackBy: HeldBackBy;
}

/** @param poleNodes node at which each pole is passed, in order */
export function gateReadings(run: LineRun, poleNodes: readonly number[]): GateReading[] {
  const last = run.t.length - 1;
  const between = (a: number, b: number) => Math.round((a + b) / 2);
  return poleNodes.map((pole, i) => {
    const from = i === 0 ? 0 : between(poleNodes[i - 1], pole);
    const to = i + 1 < poleNodes.length ? between(pole, poleNodes[i + 1]) : last;
    const nodes = Array.from({ length: to - from + 1 }, (_, k) => from + k);
    const most = (column: Float64Array) => Math.max(...nodes.map(k => Math.abs(column[k])));
    const edged = nodes.filter(k => Math.abs(run.edge[k]) >= GRIP_FROM);
    const held = new Float64Array(HELD_BACK_BY.length);
    for (const k of nodes) if (k > 0) held[run.limit[k]] += run.t[k] - run.t[k - 1];
    return {
      seconds: run.t[pole],
      split: run.t[pole] - (i === 0 ? 0 : run.t[poleNodes[i - 1]]),
      speed: run.massSpeed[pole],
      radius: 1 / Math.max(1e-6, most(run.curvature)),
      edge: most(run.edge),
      lean: most(run.lean),
      load: most(run.push),
      grip: edged.length > 0 ? Math.min(...edged.map(k => run.hold[k])) : Number.NaN,
      drift: most(run.drift),
      heldBackBy: HELD_BACK_BY[held.indexOf(Math.max(...held))],
    };
  });
}

/**
 * Where one run wins on another through the same gates: seconds it is behind at each node, down the hill. Both begin at
 * once, and their nodes lie across the same places of the set.
 */
export function gapAlong(
  run: Pick<LineRun, 't'>,
  other: Pick<LineRun, 't' | 'y'>,
): { readonly y: Float64Array; readonly gap: Float64Array } {
  const nodes = Math.min(run.t.length, other.t.length);
  return {
    y: other.y.slice(0, nodes),
    gap: run.t.slice(0, nodes).map((t, k) => t - other.t[k]),
  };
}
