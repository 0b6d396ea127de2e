import type { FieldFault } from '../fault/index.ts';
import type { Profile } from '../flex/index.ts';
import type { Sentence } from '../language/index.ts';
import type { EdgeCurve } from '../shape/index.ts';
import type { TrackFit, TrackPart } from './track-radius.ts';

/** Everything the groove needs to know of a ski, SI. */
export interface CarvingSki {
  readonly edge: EdgeCurve;
  /** EI(x), N·m². */
  readonly bending: Profile;
  /** GJ(x), N·m²; null is rigid in torsion. */
  readonly torsion: Profile | null;
  /** Free camber height, m (parabolic). */
  readonly camber: number;
  /** m from the rear contact point. */
  readonly bootCentre: number;
  readonly soleLength: number;
}

/** One question to the groove, SI. */
export interface CarveConditions {
  /** Edge angle under the boot, rad. */
  readonly edgeAngle: number;
  /** Boot force normal to the base, N. */
  readonly load: number;
  /** H_V, N/m³ (1 N/mm³ = 1e9 N/m³). */
  readonly hardness: number;
  /** Load centre ahead of the boot centre, m. */
  readonly fore: number;
  /** Rebound of the packed snow, m; `REBOUND` when absent. */
  readonly rebound?: number;
}

/** A converged equilibrium. Arrays are one value a node, rear contact point first. */
export interface Equilibrium {
  readonly ok: true;
  readonly conditions: CarveConditions;
  readonly x: Float64Array;
  /** Height of the base over its unbent, camber-free plane, m (positive towards the skier). */
  readonly height: Float64Array;
  /** Slope of the base dw/dx. */
  readonly slope: Float64Array;
  readonly twist: Float64Array;
  /** Penetration, m. */
  readonly penetration: Float64Array;
  /** Groove depth left by this point and those ahead, m; never decreases towards the tail. */
  readonly groove: Float64Array;
  /**
   * Snow line load normal to the base, N/m: the mean over each node's share of the edge, so that the trapezoid
   * rule over `x` returns the load and its moment exactly.
   */
  readonly lineLoad: Float64Array;
  /** θ − φ, rad. */
  readonly localEdgeAngle: Float64Array;
  /** Lateral position of the edge in the snow plane η, m. */
  readonly lateral: Float64Array;
  /**
   * Radius of the track on which the loaded edge scrapes least, m: load-weighted quadratic fit of η over the whole
   * of it, offset and yaw free. Continuous while the groove itself is, though it may change by a fifth within a degree
   * where a ski too stiff for its load (200 to 300 N, beyond 60 degrees) rises onto its ends.
   */
  readonly turnRadius: number;
  /** The fit that `turnRadius` is read from. */
  readonly track: TrackFit;
  /** Secondary readings of the parts behind and ahead of the boot centre. */
  readonly rear: TrackPart;
  readonly front: TrackPart;
  readonly maxPenetration: number;
  /** ∫ e dx over the edge that is in the snow, m²: the wall that a sideways force leans on. */
  readonly wallArea: number;
  readonly twistTip: number;
  readonly twistTail: number;
  readonly iterations: number;
  /** Worst of force and moment imbalance relative to the load. */
  readonly residual: number;
}

/** The groove could not be solved; never an unconverged answer in its place. */
export interface CarveFailure {
  readonly ok: false;
  readonly conditions: CarveConditions;
  /** Names the input that could not be solved, its value and what is accepted or was tried. */
  readonly reason: Sentence | FieldFault;
}
