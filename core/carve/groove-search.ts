import type { CarveConditions, CarvingSki, Equilibrium } from './groove.ts';
import { GrooveBalance } from './groove-balance.ts';
import { beginNear, type Neighbour } from './neighbouring-start.ts';
import { GrooveNewton } from './newton.ts';
import { equilibriumReader } from './read-equilibrium.ts';
import { type SkiMesh, skiMesh } from './ski-mesh.ts';
import { DOFS, skiStiffness } from './ski-stiffness.ts';
import { REBOUND, type SnowLaw } from './snow-law.ts';
import { solveAt, type Waypoint, walk } from './solution-path.ts';
import { sectionDepth } from './wedge-snow.ts';

/** Evenly pressed depth, m, from which a second steady groove may exist (found from 4.8 mm on, on the demo pairs). */
const SEVERAL_DEPTH = 4.5e-3;
/** Rebound, in full ones, at which an answer that a kink of the snow holds up is first corrected. */
const SOFTER = 2;

/**
 * The ways to an equilibrium on one mesh of a ski, whose stiffness and workspace are kept. Each returns the Newton
 * steps spent, or −1 − steps where it led nowhere. Afterwards `read` gives the answer it led to.
 */
export class GrooveSearch {
  /** The answer last reached, to its conditions and with the Newton steps to be told. */
  readonly read: (conditions: CarveConditions, iterations: number) => Equilibrium;
  readonly #mesh: SkiMesh;
  readonly #balance: GrooveBalance;
  readonly #newton: GrooveNewton;
  readonly #remembers: boolean;
  readonly #length: number;
  readonly #middleWidth: number;

  /** Answers are balanced to `tolerance` of the load. */
  constructor(ski: CarvingSki, elements: number, law: SnowLaw, tolerance: number) {
    this.#mesh = skiMesh(ski, elements);
    this.#length = ski.edge.length;
    this.#middleWidth = this.#mesh.halfWidth[this.#mesh.x.length >> 1];
    this.#balance = new GrooveBalance(this.#mesh, skiStiffness(ski, this.#mesh), law);
    this.#newton = new GrooveNewton(
      this.#balance,
      this.#length,
      this.#middleWidth,
      ski.bootCentre,
      tolerance,
    );
    this.#remembers = law.remembers;
    this.read = equilibriumReader(ski, this.#mesh, this.#balance, this.#newton.unknowns);
  }

  /**
   * Heavy loads on soft snow can have two steady grooves: one the boot cuts deepest, bending the ski, and one a
   * dug-in tip cuts for an unbent ski to ride in. There the answer is always sought along the one path that
   * reaches the first, as the snow's memory sets in, so that it cannot depend on where the search began.
   */
  severalGrooves({ edgeAngle, load, hardness }: CarveConditions): boolean {
    const depth = sectionDepth(load / this.#length, this.#middleWidth, edgeAngle, hardness);
    return this.#remembers && depth >= SEVERAL_DEPTH;
  }

  /** From answers nearby, of any mesh. */
  near(conditions: CarveConditions, neighbours: readonly Neighbour[]): number {
    beginNear(this.#mesh, neighbours, conditions.edgeAngle, this.#newton.unknowns);
    return this.#solve(conditions, reboundOf(conditions));
  }

  /** The same where that fails at once: at a softer rebound first, hardened then to the full one. */
  nearSofter(conditions: CarveConditions, neighbours: readonly Neighbour[]): number {
    beginNear(this.#mesh, neighbours, conditions.edgeAngle, this.#newton.unknowns);
    const rebound = reboundOf(conditions);
    const from = { conditions, rebound: SOFTER * rebound };
    const begun = this.#solve(conditions, from.rebound);
    return begun < 0 ? begun : then(begun, this.#walk(from, { conditions, rebound }));
  }

  /**
   * The ways from nothing, in the order to try them: an even press, or the rebound hardened from none; then a
   * lighter load, softer snow, a heavier load and a flatter ski stepped towards what was asked.
   */
  waysAfresh(conditions: CarveConditions): (() => number)[] {
    const { load, hardness, edgeAngle } = conditions;
    return [
      () => this.#settle(conditions),
      () => this.#approach({ ...conditions, load: 0.2 * load }, conditions),
      () => this.#approach({ ...conditions, hardness: Math.min(hardness, 1e9) / 5 }, conditions),
      () => this.#approach({ ...conditions, load: 5 * load }, conditions),
      () => this.#approach({ ...conditions, edgeAngle: 0.5 * edgeAngle }, conditions),
    ];
  }

  /** From an even press at once where there is one groove only, else as the rebound hardens. */
  #settle(conditions: CarveConditions): number {
    if (this.severalGrooves(conditions)) return this.#hardenRebound(conditions);
    this.#pressEvenly(conditions);
    const cold = this.#solve(conditions, reboundOf(conditions));
    return cold >= 0 ? cold : then(cold, this.#hardenRebound(conditions));
  }

  /** From an even press over a forgotten groove to the full one. */
  #hardenRebound(conditions: CarveConditions): number {
    this.#pressEvenly(conditions);
    const forgotten = this.#solve(conditions, Number.POSITIVE_INFINITY);
    if (forgotten < 0) return forgotten;
    const rebound = reboundOf(conditions);
    let deepest = rebound;
    for (const depth of this.#balance.penetration) deepest = Math.max(deepest, depth);
    const from = { conditions, rebound: 2 * deepest };
    const begun = then(forgotten, this.#solve(conditions, from.rebound));
    return begun < 0 ? begun : then(begun, this.#walk(from, { conditions, rebound }));
  }

  /** Solves an easier question and steps from it to the one asked. */
  #approach(easier: CarveConditions, request: CarveConditions): number {
    const begun = this.#settle(easier);
    const rebound = reboundOf(request);
    if (begun < 0) return begun;
    return then(begun, this.#walk({ conditions: easier, rebound }, { conditions: request, rebound }));
  }

  #solve(conditions: CarveConditions, rebound: number): number {
    const { converged, iterations } = solveAt(this.#balance, this.#newton, { conditions, rebound });
    return converged ? iterations : -1 - iterations;
  }

  #walk(from: Waypoint, to: Waypoint): number {
    return walk(this.#balance, this.#newton, from, to, 0.25);
  }

  #pressEvenly({ edgeAngle, load, hardness }: CarveConditions): void {
    const { halfWidth, slope } = this.#mesh;
    const { unknowns } = this.#newton;
    const tan = Math.tan(edgeAngle);
    const cos = Math.cos(edgeAngle);
    for (let i = 0; i < halfWidth.length; i++) {
      const depth = sectionDepth(load / this.#length, halfWidth[i], edgeAngle, hardness);
      unknowns[DOFS * i] = halfWidth[i] * tan - depth / cos;
      unknowns[DOFS * i + 1] = slope[i] * tan;
      unknowns[DOFS * i + 2] = 0;
    }
  }
}

const reboundOf = ({ rebound }: CarveConditions) => rebound ?? REBOUND;

/** Newton steps spent on a way, whether it led anywhere or not. */
export const stepsSpent = (outcome: number): number => (outcome < 0 ? -1 - outcome : outcome);

/** Steps of two tries in a row, the second of which decides whether they led anywhere. */
const then = (first: number, second: number) =>
  second < 0 ? second - stepsSpent(first) : second + stepsSpent(first);
