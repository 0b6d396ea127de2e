/**
 * The forces between ski and snow at one instant, with the pair (radius, load) solved together: the radius
 * depends on the load of the outer ski, the load on the radius.
 */

import { GRAVITY } from './balance.ts';
import { idealLean } from './ideal-carving.ts';
import type { FullConditions } from './run-conditions.ts';
import { biteFraction, shelfForce } from './skid.ts';

const STEEPEST = (89.9 * Math.PI) / 180;

/** Filled by `solveEdged` or `solveBanked`; read at once, since the next question overwrites it. */
export class SnowContact {
  /** Edge angle ≥ 0, rad, and the side it turns to (+1 right). */
  edge = 0;
  side = 1;
  bite = 0;
  /** Force square to the slope, N. */
  normal = 0;
  /** Part of the weight pulling out of the turn, N. */
  outward = 0;
  /** Sideways force that following the edge would need, N. */
  needed = 0;
  /** Most the shelf can give, N. */
  shelf = 0;
  /** Sideways force the snow does give, square to the ski's axis, towards the turn, N. */
  sideways = 0;
  /** Force between ski and snow, N. */
  load = 0;
  /** Radius of the ski's edge, m, and the curvature the ski takes up (bite over radius), 1/m. */
  radius = Infinity;
  curvature = 0;
  /** What the shelf can give along the turn beyond what is needed, N; negative slips. */
  margin = 0;
  sine = 0;

  constructor(private readonly run: FullConditions) {}

  /** A ski tilted by the programme; `signedEdge` positive in right turns. */
  solveEdged(signedEdge: number, y: number, heading: number, speed: number, drift: number): void {
    const { run } = this;
    this.edge = Math.abs(signedEdge);
    this.side = signedEdge < 0 ? -1 : 1;
    this.bite = biteFraction(this.edge, run.baseBevel);
    this.ground(y, heading, speed);
    this.shelf = this.normal > 0 ? shelfForce(this.normal, this.edge, run.baseBevel) : 0;
    const along = Math.max(Math.cos(drift), 1e-3);
    // Secant on load in = load out; with a radius that ignores load the second look already agrees.
    // Begun from the last answer: successive instants differ little.
    let before = this.load > 0 ? this.load : Math.max(this.normal, 1);
    let after = this.loadGiven(before, speed, along);
    let trial = after;
    for (let i = 0; i < 40; i++) {
      const next = this.loadGiven(trial, speed, along);
      const miss = next - trial;
      if (Math.abs(miss) <= 1e-11 * next) break;
      const bend = miss - (after - before);
      const better = bend === 0 ? next : trial - (miss * (trial - before)) / bend;
      before = trial;
      after = next;
      trial = better > 0 ? better : next;
    }
    this.margin = this.shelf * Math.max(Math.cos(drift), 0) - this.needed;
  }

  /** Ideal carving to `side`: the edge angle is the lean. `margin` turns negative where no lean balances. */
  solveBanked(side: number, y: number, heading: number, speed: number): void {
    const { run } = this;
    this.side = side;
    this.ground(y, heading, speed);
    // Nearly weightless over a crest no lean is defined; the flight that follows is located elsewhere.
    const normal = Math.max(this.normal, 1e-3 * run.mass * GRAVITY);
    const q = this.outward / normal;
    const limit = Math.sqrt(1 + q * q);
    let lean = Math.min(Math.max(this.edge, 0.2), 1.2);
    let c = 0;
    for (let i = 0; i < 60; i++) {
      const tilt = Math.min(Math.max(lean, 0), STEEPEST);
      this.radius = run.turn.radius(tilt, (run.outerShare * normal) / Math.cos(tilt));
      c = (run.mass * speed * speed * Math.cos(tilt)) / (this.radius * normal);
      const next = idealLean(Math.min(c, limit), q);
      const change = Math.abs(next - lean);
      lean = next;
      if (change < 1e-13) break;
    }
    this.margin = limit - c;
    this.edge = Math.min(Math.max(lean, 0), STEEPEST);
    // A lean below zero: the weight alone turns the skier faster than the skis would, and they lie flat.
    this.bite = lean > 0 ? 1 : 0;
    this.sideways = normal * Math.tan(this.edge);
    this.shelf = this.sideways;
    this.needed = this.sideways;
    this.load = normal / Math.cos(this.edge);
    this.curvature = (this.sideways - this.outward) / (run.mass * speed * speed);
  }

  private ground(y: number, heading: number, speed: number): void {
    const { mass, profile } = this.run;
    this.sine = profile.sine(y);
    const down = Math.cos(heading);
    const bend = profile.curvature(y) * down * down;
    this.normal = mass * (GRAVITY * Math.sqrt(1 - this.sine * this.sine) + speed * speed * bend);
    this.outward = mass * GRAVITY * this.sine * Math.sin(heading) * this.side;
  }

  private loadGiven(load: number, speed: number, along: number): number {
    const { run } = this;
    this.radius = run.turn.radius(this.edge, run.outerShare * load);
    this.curvature = this.bite / this.radius;
    this.needed = run.mass * speed * speed * this.curvature + this.outward;
    // A need the other way (the weight turning the skier faster than the edge) bears on the inner wall of the
    // groove, which is there as far as the ski has bitten.
    this.sideways = this.needed > 0 ? Math.min(this.needed / along, this.shelf) : this.bite * this.needed;
    const normal = Math.max(this.normal, 0);
    // Math.hypot guards against overflow that cannot happen here, at several times the cost.
    this.load = Math.sqrt(normal * normal + this.sideways * this.sideways);
    return this.load;
  }
}
