/**
 * The forces between ski and snow at one instant, with the pair (radius, load) solved together: the radius
 * depends on the load of the outer ski, the load on the radius.
 */

import { GRAVITY } from './balance.ts';
import { idealLean } from './ideal-carving.ts';
import type { FullConditions } from './run-conditions.ts';
import { biteFraction, shelfForce } from './skid.ts';

/** Load in and load out agree to this part of it. */
const AGREED = 1e-11;

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
  /** Cosine and sine of the heading, and cosine of the drift. */
  down = 1;
  across = 0;
  alongDrift = 1;
  /** How the load coming out changes with the load put in, as last found. */
  private slope = 0;
  /** The last answer stood at the limit of the shelf. */
  private yielded = false;

  constructor(private readonly run: FullConditions) {}

  /** A ski tilted by the programme; `signedEdge` positive in right turns. */
  solveEdged(signedEdge: number, y: number, heading: number, speed: number, drift: number): void {
    const { run } = this;
    this.edge = Math.abs(signedEdge);
    this.side = signedEdge < 0 ? -1 : 1;
    this.bite = biteFraction(this.edge, run.baseBevel);
    this.ground(y, heading, speed);
    this.shelf = this.normal > 0 ? shelfForce(this.normal, this.edge, run.baseBevel) : 0;
    this.alongDrift = Math.cos(drift);
    this.agree(speed, Math.max(this.alongDrift, 1e-3));
    this.margin = this.shelf * Math.max(this.alongDrift, 0) - this.needed;
  }

  /** Finds the load whose radius asks for that very load. */
  private agree(speed: number, along: number): void {
    const normal = Math.max(this.normal, 0);
    if (this.bite === 0) {
      // No edge in the snow, no arc: nothing depends on the load.
      this.loadGiven(normal, speed, along, normal);
      return;
    }
    if (this.yielded) {
      // A shelf that gave all it has gives it whatever the arc would need, so the load is known beforehand.
      const most = Math.sqrt(normal * normal + this.shelf * this.shelf);
      this.loadGiven(most, speed, along, normal);
      if (this.sideways === this.shelf) return;
      this.yielded = false;
    }
    // Secant on load in = load out, begun from the last answer and the last slope: successive instants differ
    // little.
    let before = this.load > 0 ? this.load : Math.max(normal, 1);
    let after = this.loadGiven(before, speed, along, normal);
    if (Math.abs(after - before) <= AGREED * after) return;
    let trial = before + (after - before) / (1 - this.slope);
    if (!(trial > 0)) trial = after;
    for (let i = 0; i < 40; i++) {
      const next = this.loadGiven(trial, speed, along, normal);
      const miss = next - trial;
      const step = trial - before;
      // Over a step of rounding size the slope is noise.
      if (Math.abs(step) > 1e-9 * next) {
        const slope = (next - after) / step;
        this.slope = slope < 0.9 && slope > -10 ? slope : 0;
      }
      if (Math.abs(miss) <= AGREED * next) break;
      const better = trial + miss / (1 - this.slope);
      before = trial;
      after = next;
      trial = better > 0 ? better : next;
    }
    this.yielded = this.sideways > 0 && this.sideways === this.shelf;
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
    this.down = Math.cos(heading);
    this.across = Math.sin(heading);
    const bend = profile.curvature(y) * this.down * this.down;
    this.normal = mass * (GRAVITY * Math.sqrt(1 - this.sine * this.sine) + speed * speed * bend);
    this.outward = mass * GRAVITY * this.sine * this.across * this.side;
  }

  private loadGiven(load: number, speed: number, along: number, normal: number): number {
    const { run } = this;
    this.radius = this.bite > 0 ? run.turn.radius(this.edge, run.outerShare * load) : Infinity;
    this.curvature = this.bite / this.radius;
    this.needed = run.mass * speed * speed * this.curvature + this.outward;
    // A need the other way (the weight turning the skier faster than the edge) bears on the inner wall of the
    // groove, which is there as far as the ski has bitten.
    this.sideways = this.needed > 0 ? Math.min(this.needed / along, this.shelf) : this.bite * this.needed;
    // Math.hypot guards against overflow that cannot happen here, at several times the cost.
    this.load = Math.sqrt(normal * normal + this.sideways * this.sideways);
    return this.load;
  }
}
