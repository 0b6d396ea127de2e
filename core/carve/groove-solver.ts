import type { CarveConditions, CarveFailure, CarvingSki, Equilibrium } from './groove.ts';
import { GrooveBalance } from './groove-balance.ts';
import { beginNear, type Neighbour } from './neighbouring-start.ts';
import { GrooveNewton } from './newton.ts';
import { equilibriumReader } from './read-equilibrium.ts';
import { skiMesh } from './ski-mesh.ts';
import { DOFS, skiStiffness } from './ski-stiffness.ts';
import { REBOUND, type SnowLaw } from './snow-law.ts';
import { solveAt, type Waypoint, walk } from './solution-path.ts';
import { whatCannotBeSolved } from './solvable.ts';
import { sectionDepth, wedgeSnow } from './wedge-snow.ts';

/** Evenly pressed depth, m, from which a second steady groove may exist (found from 4.8 mm on, on the demo pairs). */
const SEVERAL_DEPTH = 4.5e-3;

export interface GrooveSolverOptions {
  /** Beam elements along the contact length; 120 when absent, and twice as many then change R by under 0.2 %. */
  readonly elements?: number;
  /** What the edge is pressed into. */
  readonly law?: SnowLaw;
}

/** Solves one ski's equilibria; made once for a ski and reused. Not re-entrant. */
export interface GrooveSolver {
  /** Edge angle rad, load N, hardness N/m³, fore m. */
  solve(conditions: CarveConditions, start?: GrooveStart): Equilibrium | CarveFailure;
}

/** Where to begin. */
export interface GrooveStart {
  /** A neighbouring answer, or several with their shares. */
  readonly from?: Equilibrium | readonly Neighbour[];
  /**
   * Says that the neighbours lie so close on either side of the question that the groove between them is theirs:
   * it is then sought from them even where a second one may exist.
   */
  readonly sameGroove?: boolean;
}

/**
 * The equilibrium of a ski in its own groove, for one ski: mesh, stiffness and workspace are kept.
 *
 * A cold start presses the ski to an even depth and lets Newton loose. Where that fails, a softened rebound
 * (at first so soft that the groove is forgotten) is hardened in steps, then a lighter load, softer snow, a heavier
 * load or a flatter ski is stepped towards what was asked. What none of them reaches is a failure, never an answer.
 */
export function grooveSolver(ski: CarvingSki, options: GrooveSolverOptions = {}): GrooveSolver {
  const mesh = skiMesh(ski, options.elements ?? 120);
  const law = options.law ?? wedgeSnow;
  const length = ski.edge.length;
  const middleWidth = mesh.halfWidth[mesh.x.length >> 1];
  const balance = new GrooveBalance(mesh, skiStiffness(ski, mesh), law);
  const newton = new GrooveNewton(balance, length, middleWidth, ski.bootCentre);
  const { unknowns } = newton;
  const nodes = mesh.x.length;
  const result = equilibriumReader(ski, mesh, balance, unknowns);

  function pressEvenly(conditions: CarveConditions): void {
    const { edgeAngle, load, hardness } = conditions;
    const tan = Math.tan(edgeAngle);
    const cos = Math.cos(edgeAngle);
    for (let i = 0; i < nodes; i++) {
      const y = mesh.halfWidth[i];
      const depth = sectionDepth(load / length, y, edgeAngle, hardness);
      unknowns[DOFS * i] = y * tan - depth / cos;
      unknowns[DOFS * i + 1] = mesh.slope[i] * tan;
      unknowns[DOFS * i + 2] = 0;
    }
  }

  /** From an even press over a forgotten groove to the full one; Newton steps spent, negative if blocked. */
  function hardenRebound(conditions: CarveConditions): number {
    pressEvenly(conditions);
    const first = solveAt(balance, newton, { conditions, rebound: Number.POSITIVE_INFINITY });
    if (!first.converged) return -1 - first.iterations;
    let deepest = REBOUND;
    for (let i = 0; i < nodes; i++) deepest = Math.max(deepest, balance.penetration[i]);
    const from: Waypoint = { conditions, rebound: 2 * deepest };
    const begun = solveAt(balance, newton, from);
    if (!begun.converged) return -1 - first.iterations - begun.iterations;
    const spent = walk(balance, newton, from, { conditions, rebound: REBOUND }, 0.25);
    const before = first.iterations + begun.iterations;
    return spent < 0 ? spent - before : spent + before;
  }

  /** From an even press at once where there is one groove only, else as the rebound hardens. */
  function settle(conditions: CarveConditions): number {
    if (severalGrooves(conditions)) return hardenRebound(conditions);
    pressEvenly(conditions);
    const cold = solveAt(balance, newton, { conditions, rebound: REBOUND });
    if (cold.converged) return cold.iterations;
    const spent = hardenRebound(conditions);
    return spent < 0 ? spent - cold.iterations : spent + cold.iterations;
  }

  /** Solves an easier question and steps from it to the one asked. */
  function approach(easier: CarveConditions, asked: CarveConditions): number {
    const begun = settle(easier);
    if (begun < 0) return begun;
    const from = { conditions: easier, rebound: REBOUND };
    const spent = walk(balance, newton, from, { conditions: asked, rebound: REBOUND }, 0.25);
    return spent < 0 ? spent - begun : spent + begun;
  }

  /**
   * Heavy loads on soft snow can have two steady grooves: one the boot cuts deepest, bending the ski, and one a
   * dug-in tip cuts for an unbent ski to ride in. There the answer is always sought along the one path that
   * reaches the first, as the snow's memory sets in, so that it cannot depend on where the search began.
   */
  function severalGrooves({ edgeAngle, load, hardness }: CarveConditions): boolean {
    return law.remembers && sectionDepth(load / length, middleWidth, edgeAngle, hardness) >= SEVERAL_DEPTH;
  }

  function solve(
    conditions: CarveConditions,
    { from, sameGroove = false }: GrooveStart = {},
  ): Equilibrium | CarveFailure {
    const refusal = whatCannotBeSolved(ski, conditions);
    if (refusal) return { ok: false, conditions, reason: refusal };
    const asked: Waypoint = { conditions, rebound: REBOUND };
    let spent = 0;
    if (from && (sameGroove || !severalGrooves(conditions))) {
      const neighbours = 'ok' in from ? [{ answer: from, share: 1 }] : from;
      beginNear(mesh, neighbours, conditions.edgeAngle, unknowns);
      const near = solveAt(balance, newton, asked);
      spent += near.iterations;
      if (near.converged) return result(conditions, spent);
    }
    const tries = [
      () => settle(conditions),
      () => approach({ ...conditions, load: 0.2 * conditions.load }, conditions),
      () => approach({ ...conditions, hardness: Math.min(conditions.hardness, 1e9) / 5 }, conditions),
      () => approach({ ...conditions, load: 5 * conditions.load }, conditions),
      () => approach({ ...conditions, edgeAngle: 0.5 * conditions.edgeAngle }, conditions),
    ];
    for (const attempt of tries) {
      const steps = attempt();
      spent += Math.abs(steps);
      if (steps >= 0) return result(conditions, spent);
    }
    return { ok: false, conditions, reason: unreached(conditions) };
  }

  return { solve };
}

function unreached({ edgeAngle, load, hardness }: CarveConditions): string {
  const angle = ((edgeAngle * 180) / Math.PI).toFixed(1);
  return (
    `edge angle ${angle} degrees with load ${load.toFixed(0)} N on snow of ${Number((hardness / 1e9).toPrecision(3))} N/mm³: ` +
    'no equilibrium found; tried a cold start, a softened rebound, other loads, softer snow and a smaller edge angle'
  );
}
