import { BorderedBand } from '../numeric/index.ts';
import type { CarveConditions } from './groove.ts';
import type { SkiMesh } from './ski-mesh.ts';
import { DOFS, elasticForces, HALF_BAND, ROW, type SkiStiffness } from './ski-stiffness.ts';
import type { SnowLaw } from './snow-law.ts';

// Kept as constants of this file: some loaders turn an imported binding into a call on every use.
const STEP = DOFS;
const REACH = HALF_BAND;
const WIDTH = ROW;

/** Groove-cutting points whose pull on the points behind is kept in the Jacobian. */
const MOST_CUTTERS = 24;
/** Most points a stretch is summed up at: two pieces of two. */
const POINTS = 4;
/** Stored derivatives a stretch. */
const SLOPES = 16;
const GAUSS_NEAR = 0.5 - Math.sqrt(1 / 12);
const GAUSS_FAR = 0.5 + Math.sqrt(1 / 12);

/**
 * The equilibrium equations of a ski in its own groove and their Jacobian:
 * bending and twist − snow + boot = 0 at every unknown (w, w', φ of each node).
 *
 * Steady carving: all edge points follow one track, front first, so a point meets what the points ahead left:
 * D = max(e here and ahead). At e = D the snow is loaded as virgin; a point shallower than D unloads steeply,
 * f = f_virgin(D)·max(0, 1 − (D − e)/r). (Depth is irreversible and the tail keeps nearly the greatest depth:
 * Mössner et al., Modeling of the ski-snow contact for a carved turn; Federolf et al., Sports Eng. 12 (2010).)
 */
export class GrooveBalance {
  readonly residual: Float64Array;
  readonly penetration: Float64Array;
  readonly groove: Float64Array;
  /** Snow force at each node, N, and twisting moment about the midline, N·m. */
  readonly nodeForce: Float64Array;
  readonly nodeMoment: Float64Array;
  /** Where the snow was summed up: station (m) and force (N) of each point, front to rear, `pressedPoints` of them. */
  readonly pressedAt: Float64Array;
  readonly pressedForce: Float64Array;
  pressedPoints = 0;
  readonly jacobian: BorderedBand;
  /** Diagonal of the elastic stiffness: what an unknown's rounding is multiplied by. */
  readonly stiffest: Float64Array;

  readonly #mesh: SkiMesh;
  readonly #stiffness: SkiStiffness;
  readonly #law: SnowLaw;
  #rebound = 0;
  #remembers = true;
  readonly #external: Float64Array;
  readonly #snow = new Float64Array(6);
  /** ∂e/∂φ at each node. */
  readonly #depthByTwist: Float64Array;
  /** Per stretch: ∫ of (f_e, f_θ, m_e, m_θ) times N₀N₀, N₀N₁, N₁N₁, then ∫ of (f_D, m_D) times N₀, N₁. */
  readonly #slopes: Float64Array;
  /** Node that cut the groove a stretch rides in; −1 where it rides in none. */
  readonly #cutter: Int32Array;
  #angle = 0;
  #cos = 1;
  #hardness = 1;

  constructor(mesh: SkiMesh, stiffness: SkiStiffness, law: SnowLaw) {
    const nodes = mesh.x.length;
    this.#mesh = mesh;
    this.#stiffness = stiffness;
    this.#law = law;
    this.residual = new Float64Array(STEP * nodes);
    this.stiffest = this.residual.map((_, i) => stiffness.band[i * WIDTH + REACH]);
    this.#external = new Float64Array(STEP * nodes);
    this.penetration = new Float64Array(nodes);
    this.groove = new Float64Array(nodes);
    this.nodeForce = new Float64Array(nodes);
    this.nodeMoment = new Float64Array(nodes);
    this.pressedAt = new Float64Array(POINTS * nodes);
    this.pressedForce = new Float64Array(POINTS * nodes);
    this.#depthByTwist = new Float64Array(nodes);
    this.#slopes = new Float64Array(SLOPES * nodes);
    this.#cutter = new Int32Array(nodes);
    this.jacobian = new BorderedBand(STEP * nodes, MOST_CUTTERS);
  }

  /** Takes up the conditions and rebound (m) of the next evaluations; an endless rebound forgets the groove. */
  pose(conditions: CarveConditions, rebound: number): void {
    this.#rebound = rebound;
    this.#remembers = this.#law.remembers && rebound < Number.POSITIVE_INFINITY;
    this.#angle = conditions.edgeAngle;
    this.#cos = Math.cos(conditions.edgeAngle);
    this.#hardness = conditions.hardness;
    const { camberLoad, bootLoad, bootMoment } = this.#stiffness;
    const moment = conditions.load * conditions.fore;
    for (let i = 0; i < this.#external.length; i++) {
      this.#external[i] = conditions.load * bootLoad[i] + moment * bootMoment[i] - camberLoad[i];
    }
  }

  /** Residual, snow fields and the parts of the Jacobian at `unknowns`. */
  evaluate(unknowns: Float64Array): void {
    const { halfWidth } = this.#mesh;
    const { held } = this.#stiffness;
    const { residual, penetration, groove, nodeForce, nodeMoment } = this;
    const nodes = halfWidth.length;
    for (let i = 0; i < nodes; i++) {
      const local = this.#angle - unknowns[STEP * i + 2];
      penetration[i] = halfWidth[i] * Math.sin(local) - unknowns[STEP * i] * this.#cos;
      this.#depthByTwist[i] = -halfWidth[i] * Math.cos(local);
    }
    nodeForce.fill(0);
    nodeMoment.fill(0);
    this.#slopes.fill(0);
    this.pressedPoints = 0;
    let deepest = Math.max(0, penetration[nodes - 1]);
    let cutter = nodes - 1;
    groove[nodes - 1] = deepest;
    for (let rear = nodes - 2; rear >= 0; rear--) {
      this.#cutter[rear] = cutter;
      this.#stretch(rear, deepest, unknowns);
      if (penetration[rear] > deepest) {
        deepest = penetration[rear];
        cutter = rear;
      }
      groove[rear] = deepest;
    }
    elasticForces(this.#stiffness.elements, unknowns, residual);
    for (let i = 0; i < nodes; i++) {
      const unknown = STEP * i;
      residual[unknown] += this.#external[unknown] - nodeForce[i];
      residual[unknown + 1] += this.#external[unknown + 1];
      residual[unknown + 2] = held[unknown + 2]
        ? unknowns[unknown + 2]
        : residual[unknown + 2] - nodeMoment[i];
    }
  }

  /**
   * Snow on the stretch from node `rear` to the next, penetration linear between them, integrated piece by
   * piece: where it has lifted clear of its groove, where it is lifting out, where it cuts deeper. Splitting
   * at the changes keeps the equations smooth when a change wanders from one stretch to the next.
   */
  #stretch(rear: number, deepest: number, unknowns: Float64Array): void {
    const front = this.penetration[rear + 1];
    const back = this.penetration[rear];
    if (!this.#remembers) {
      this.#piece(rear, 0, 1, -1, unknowns);
      return;
    }
    const clear = deepest - this.#rebound;
    const change = back - front;
    if (change > 0) {
      const grips = front < clear ? Math.min(1, (clear - front) / change) : 0;
      const cuts = front < deepest ? Math.min(1, (deepest - front) / change) : 0;
      if (cuts > grips) this.#piece(rear, grips, cuts, deepest, unknowns);
      if (cuts < 1) this.#piece(rear, cuts, 1, -1, unknowns);
    } else if (front > clear) {
      const lifts = back < clear ? (clear - front) / change : 1;
      this.#piece(rear, 0, lifts, deepest, unknowns);
    }
  }

  /** Two-point Gauss over ξ from `from` to `to` (0 front, 1 rear); `deepest` < 0 cuts virgin snow. */
  #piece(rear: number, from: number, to: number, deepest: number, unknowns: Float64Array): void {
    const { x, halfWidth } = this.#mesh;
    const { penetration, nodeForce, nodeMoment } = this;
    const snow = this.#snow;
    const slopes = this.#slopes;
    const base = SLOPES * rear;
    const front = rear + 1;
    const weight = 0.5 * (to - from) * (x[front] - x[rear]);
    for (let point = 0; point < 2; point++) {
      const n0 = from + (to - from) * (point === 0 ? GAUSS_NEAR : GAUSS_FAR);
      const n1 = 1 - n0;
      const depth = n0 * penetration[rear] + n1 * penetration[front];
      const y = n0 * halfWidth[rear] + n1 * halfWidth[front];
      const twist = n0 * unknowns[STEP * rear + 2] + n1 * unknowns[STEP * front + 2];
      let kept = 1;
      if (deepest < 0) {
        this.#law.evaluate(depth, y, this.#angle - twist, this.#hardness, snow);
      } else {
        this.#law.evaluate(deepest, y, this.#angle - twist, this.#hardness, snow);
        kept = 1 - (deepest - depth) / this.#rebound;
        const forceByLift = snow[0] / this.#rebound;
        const momentByLift = snow[3] / this.#rebound;
        const forceByGroove = weight * (kept * snow[1] - forceByLift);
        const momentByGroove = weight * (kept * snow[4] - momentByLift);
        slopes[base + 12] += n0 * forceByGroove;
        slopes[base + 13] += n1 * forceByGroove;
        slopes[base + 14] += n0 * momentByGroove;
        slopes[base + 15] += n1 * momentByGroove;
        snow[1] = forceByLift;
        snow[4] = momentByLift;
      }
      const force = weight * kept * snow[0];
      const moment = weight * kept * snow[3];
      this.pressedAt[this.pressedPoints] = n0 * x[rear] + n1 * x[front];
      this.pressedForce[this.pressedPoints++] = force;
      nodeForce[rear] += n0 * force;
      nodeForce[front] += n1 * force;
      nodeMoment[rear] += n0 * moment;
      nodeMoment[front] += n1 * moment;
      for (let pair = 0; pair < 3; pair++) {
        const shapes = weight * (pair === 0 ? n0 * n0 : pair === 1 ? n0 * n1 : n1 * n1);
        const at = base + 4 * pair;
        slopes[at] += shapes * snow[1];
        slopes[at + 1] += shapes * kept * snow[2];
        slopes[at + 2] += shapes * snow[4];
        slopes[at + 3] += shapes * kept * snow[5];
      }
    }
  }

  /** Assembles and factors the Jacobian at the last evaluated point; false when it is singular. */
  factor(): boolean {
    const { jacobian } = this;
    const { held } = this.#stiffness;
    const slopes = this.#slopes;
    jacobian.band.set(this.#stiffness.band);
    jacobian.clearColumns();
    let column: Float64Array | null = null;
    let columnCutter = -1;
    for (let rear = this.#cutter.length - 2; rear >= 0; rear--) {
      const base = SLOPES * rear;
      this.#couple(rear, rear, base);
      this.#couple(rear, rear + 1, base + 4);
      this.#couple(rear + 1, rear, base + 4);
      this.#couple(rear + 1, rear + 1, base + 8);
      const byGroove = slopes[base + 12] !== 0 || slopes[base + 13] !== 0;
      if (!byGroove) continue;
      const cutter = this.#cutter[rear];
      if (cutter !== columnCutter) {
        const byTwist = held[STEP * cutter + 2] ? 0 : this.#depthByTwist[cutter];
        column = jacobian.openColumn(STEP * cutter, -this.#cos, STEP * cutter + 2, byTwist);
        columnCutter = cutter;
      }
      if (!column) continue;
      const unknown = STEP * rear;
      column[unknown] -= slopes[base + 12];
      column[unknown + STEP] -= slopes[base + 13];
      if (!held[unknown + 2]) column[unknown + 2] -= slopes[base + 14];
      if (!held[unknown + STEP + 2]) column[unknown + STEP + 2] -= slopes[base + 15];
    }
    return jacobian.factor();
  }

  /** Adds the snow on node `row` answering to penetration and angle of node `by`. */
  #couple(row: number, by: number, at: number): void {
    const { band } = this.jacobian;
    const { held } = this.#stiffness;
    const slopes = this.#slopes;
    const force = STEP * row;
    const moment = force + 2;
    const height = STEP * by;
    const twist = height + 2;
    const byTwist = this.#depthByTwist[by];
    const diagonal = force * WIDTH + REACH - force;
    band[diagonal + height] += slopes[at] * this.#cos;
    if (!held[twist]) band[diagonal + twist] -= slopes[at] * byTwist - slopes[at + 1];
    if (held[moment]) return;
    const momentDiagonal = moment * WIDTH + REACH - moment;
    band[momentDiagonal + height] += slopes[at + 2] * this.#cos;
    if (!held[twist]) band[momentDiagonal + twist] -= slopes[at + 2] * byTwist - slopes[at + 3];
  }

  /** Worst of the ski's force and moment imbalance over the load (moments over load times contact length). */
  imbalance(conditions: CarveConditions, bootCentre: number): number {
    const { x } = this.#mesh;
    let force = -conditions.load;
    let moment = -conditions.load * conditions.fore;
    for (let i = 0; i < x.length; i++) {
      force += this.nodeForce[i];
      moment += this.nodeForce[i] * (x[i] - bootCentre);
    }
    const length = x[x.length - 1];
    return Math.max(Math.abs(force), Math.abs(moment) / length) / conditions.load;
  }
}
