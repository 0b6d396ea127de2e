import { accept, FieldError } from '../fault/index.ts';
import {
  factorSymmetric,
  firstWhere,
  multiplySymmetric,
  prescribe,
  type SymmetricBand,
  solveSymmetric,
} from '../numeric/index.ts';
import { bendingMatrix, DEFAULT_ELEMENTS, gaussValues, meshThrough, nodeAt } from './beam.ts';
import type { Profile } from './profile.ts';

/** The base counts as down where it is within this of the table, m. */
export const DOWN_WITHIN = 1e-4;

export interface TableSetup {
  /** Contact length: the ski is [0, length] and stands on its contact points. */
  readonly length: number;
  /** Free camber height, m, as a parabola through the contact points. */
  readonly camber: number;
  /** Where the press stands. */
  readonly at: number;
  readonly elements?: number;
}

/** The ski pressed onto the table by one load, SI. */
export interface TableState {
  readonly load: number;
  /** How far the loaded point has come down, m. */
  readonly loadDeflection: number;
  /** Gap between base and table at each node, m. */
  readonly gap: Float64Array;
  /** Table reaction at each node, N. */
  readonly reaction: Float64Array;
}

export interface FlatTable {
  readonly x: Float64Array;
  /** Least load at which the base touches anywhere between the contact points, N; 0 without camber. */
  readonly firstTouch: number;
  /** Where it touches first, m. */
  readonly firstTouchAt: number;
  /** Load bringing the whole base within `DOWN_WITHIN`, N; null when no load at this point does. */
  readonly flatten: number | null;
  /** Greatest gap that is left however hard one presses there, m, and where. */
  readonly gapLeft: number;
  readonly gapLeftAt: number;
  /** Solves for one load, N ≥ 0. */
  press(load: number): TableState;
}

/**
 * A cambered ski on a flat hard table under one press: unilateral contact along the whole base.
 * Once the base has touched under the press the rest of the load goes straight into the table, so with a
 * point load some camber can stay for good (at most 0.0741 h for a uniform ski): `flatten` is then null and
 * `gapLeft` says how much. Throws RangeError when `at` is not between the contact points.
 */
export function flatTable(profile: Profile, setup: TableSetup): FlatTable {
  const { length, camber, at, elements = DEFAULT_ELEMENTS } = setup;
  if (!(at > 0 && at < length)) {
    throw new FieldError({
      field: 'at',
      found: { quantity: 'station', value: at },
      accepted: { above: 0, below: length, quantity: 'station' },
    });
  }
  accept('camber', camber, { from: 0, quantity: 'width' });
  const x = meshThrough(0, length, [at], elements);
  const gap0 = x.map(xi => (4 * camber * xi * (length - xi)) / (length * length));
  const free = bendingMatrix(x, gaussValues(profile, x));
  const loaded = nodeAt(x, at);
  const contact = new TableContact(free, gap0, loaded);

  const unit = contact.unitDeflection();
  let firstTouch = Number.POSITIVE_INFINITY;
  let touchNode = loaded;
  for (let i = 1; i < x.length - 1; i++) {
    const load = gap0[i] / unit[2 * i];
    if (load < firstTouch) {
      firstTouch = load;
      touchNode = i;
    }
  }
  const press = (load: number) => contact.press(load);
  const widest = (load: number) => press(load).gap.reduce((most, gap) => Math.max(most, gap), 0);

  // Far past the first touch nothing but the force under the press changes any more.
  const hard = 1000 * firstTouch;
  const settled = press(hard);
  let gapNode = 0;
  for (let i = 1; i < x.length; i++) if (settled.gap[i] > settled.gap[gapNode]) gapNode = i;
  const gapLeft = settled.gap[gapNode];
  let flatten: number | null = null;
  if (gapLeft <= DOWN_WITHIN) {
    let low = 0;
    let high = firstTouch;
    while (widest(high) > DOWN_WITHIN && high < hard) {
      low = high;
      high = Math.min(2 * high, hard);
    }
    if (widest(0) <= DOWN_WITHIN) high = 0;
    flatten = firstWhere(load => widest(load) <= DOWN_WITHIN, low, high, 1e-9 * high);
  }
  return { x, firstTouch, firstTouchAt: x[touchNode], flatten, gapLeft, gapLeftAt: x[gapNode], press };
}

/**
 * Contact by a dual active-set method (after Goldfarb & Idnani, Math. Program. 27 (1983) 1): the node deepest
 * in the table is pushed out until it just touches, letting go on the way of any node whose reaction dies.
 */
class TableContact {
  private readonly nodes: number;
  private readonly band: SymmetricBand;
  private readonly applied: Float64Array;
  private readonly push: Float64Array;

  constructor(
    private readonly free: SymmetricBand,
    private readonly gap0: Float64Array,
    private readonly loaded: number,
  ) {
    this.nodes = gap0.length;
    this.band = { ...free, data: new Float64Array(free.data.length) };
    this.applied = new Float64Array(free.size);
    this.push = new Float64Array(free.size);
  }

  /** Downward deflection under 1 N with the ends on the table, all unknowns. */
  unitDeflection(): Float64Array {
    const rhs = new Float64Array(this.free.size);
    rhs[2 * this.loaded] = 1;
    return this.solve(rhs, new Set([0, this.nodes - 1]), () => 0);
  }

  press(load: number): TableState {
    const { nodes, gap0, applied } = this;
    const active = new Set([0, nodes - 1]);
    applied.fill(0);
    applied[2 * this.loaded] = load;
    let u = this.solve(Float64Array.from(applied), active, i => gap0[i]);
    const reaction = new Float64Array(nodes);
    this.readReactions(u, active, reaction);
    const allowed = 1e-12 + 1e-10 * Math.max(...gap0);
    for (let change = 0; change < 20 * nodes; change++) {
      let worst = -1;
      let depth = allowed;
      for (let i = 0; i < nodes; i++) {
        const below = u[2 * i] - gap0[i];
        if (!active.has(i) && below > depth) {
          depth = below;
          worst = i;
        }
      }
      if (worst < 0) return this.state(load, u, reaction);
      this.lift(worst, u, reaction, active);
      u = this.solve(Float64Array.from(applied), active, i => gap0[i]);
      this.readReactions(u, active, reaction);
    }
    throw new FieldError({
      field: 'load',
      found: { quantity: 'force', value: load },
      accepted: { key: 'accepted.smallerLoad' },
    });
  }

  /** Raises the reaction at `node` from nothing until it touches, dropping contacts that would have to pull. */
  private lift(node: number, u: Float64Array, reaction: Float64Array, active: Set<number>): void {
    const { push, nodes } = this;
    const rate = new Float64Array(nodes);
    let depth = u[2 * node] - this.gap0[node];
    while (active.size >= 2) {
      push.fill(0);
      push[2 * node] = -1;
      const held = Float64Array.from(push);
      const rise = this.solve(Float64Array.from(push), active, () => 0);
      this.readRates(rise, held, active, rate);
      let step = depth / -rise[2 * node];
      let dropped = -1;
      for (const i of active) {
        if (rate[i] < 0 && reaction[i] / -rate[i] < step) {
          step = reaction[i] / -rate[i];
          dropped = i;
        }
      }
      for (const i of active) reaction[i] += step * rate[i];
      depth += step * rise[2 * node];
      if (dropped < 0) break;
      active.delete(dropped);
      reaction[dropped] = 0;
    }
    active.add(node);
  }

  private solve(rhs: Float64Array, active: Set<number>, value: (node: number) => number): Float64Array {
    this.band.data.set(this.free.data);
    for (const i of active) prescribe(this.band, rhs, 2 * i, value(i));
    factorSymmetric(this.band);
    return solveSymmetric(this.band, rhs);
  }

  /** Table reactions (upward) that hold u: what the load leaves over at the nodes in contact. */
  private readReactions(u: Float64Array, active: Set<number>, out: Float64Array): void {
    this.readRates(u, this.applied, active, out);
  }

  private readRates(u: Float64Array, load: Float64Array, active: Set<number>, out: Float64Array): void {
    const elastic = multiplySymmetric(this.free, u, new Float64Array(this.free.size));
    out.fill(0);
    for (const i of active) out[i] = load[2 * i] - elastic[2 * i];
  }

  private state(load: number, u: Float64Array, reaction: Float64Array): TableState {
    const gap = this.gap0.map((g, i) => Math.max(0, g - u[2 * i]));
    return { load, loadDeflection: u[2 * this.loaded], gap, reaction: Float64Array.from(reaction) };
  }
}
