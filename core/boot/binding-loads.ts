/**
 * What a ski hands to the binding: forces and moments, for information. Nothing here sets, checks or approves a
 * binding, and no value of it may be compared with a setting or turned into one.
 */

import { type AcceptedRange, accept } from '../fault/index.ts';
import { DEGREE } from '../units/index.ts';

/** Said wherever these loads are shown. */
export const BINDING_CAUTION = { key: 'boot.cautionBinding' } as const;

/**
 * Forces and moments that the snow puts on the boot through ski and binding, SI, at the boot centre and `height`
 * over the base. Axes are the ski's own under the boot: ahead, to the skier's right along the base, and off the
 * base towards the skier. The ski's own weight and inertia are left out.
 */
export interface BindingLoads {
  /** Presses the ski's base towards the boot, N. */
  readonly normal: number;
  /** Along the base, N; positive to the right. */
  readonly sideways: number;
  /** Along the ski, N; positive ahead. Friction pulls back, so it is negative. */
  readonly foreAft: number;
  /** About the ski's long axis, N·m; positive lifts the right edge, which flattens the ski in a right turn. */
  readonly roll: number;
  /** About the axis across the ski, N·m; positive lifts the toe. */
  readonly pitch: number;
  /** About the base's normal, N·m; positive turns the toe to the right. */
  readonly yaw: number;
}

/** One moment of a turn. Right is positive for both angles, as throughout a run. */
export interface TurnReadings {
  /** Force between the snow and this ski, N. */
  readonly load: number;
  /** Lean ψ of that force from the slope's normal, rad. */
  readonly lean: number;
  /** Edge angle θ, rad. */
  readonly edgeAngle: number;
}

/** What is below the boot, and what holds the ski back. Lengths m. */
export interface BootOnSki {
  /** Of the point the moments are about, over the base: the standing height for the binding under the sole. */
  readonly height: number;
  /** Half the ski's waist. */
  readonly halfWaist: number;
  /** Friction with what the edge scrapes off, as a share of the load; 0 when absent. */
  readonly friction?: number;
  /**
   * Where a solved pressure acts (`pressureCentre` of core/carve). Absent, it acts under the boot centre at the
   * waist's edge, on a flat ski in the middle.
   */
  readonly centre?: { readonly fore: number; readonly aside: number; readonly rise: number };
}

/** Over this edge angle the push moves from the middle of a flat ski to its edge, rad: the run's own measure of flat. */
const FLAT = 4 * DEGREE;

const EITHER_WAY: AcceptedRange = { from: -Math.PI / 2, to: Math.PI / 2, quantity: 'angle' };

/**
 * Loads at one moment of a turn. Every stretch of the edge is pushed in the same direction, so that forces and
 * moments are those of the whole push at its centre; the ski's bend turns the push fore and aft by less than a
 * tenth at the ends and is left out.
 *
 * @throws FieldError naming what cannot be used
 */
export function bindingLoads(turn: TurnReadings, boot: BootOnSki): BindingLoads {
  const { load, lean, edgeAngle } = turn;
  accept('load', load, { from: 0, quantity: 'force' });
  accept('lean', lean, EITHER_WAY);
  accept('edgeAngle', edgeAngle, EITHER_WAY);
  checkBoot(boot);
  const out = new Float64Array(6);
  loadsAt(load, lean, edgeAngle, boot, 0, out);
  const [normal, sideways, foreAft, roll, pitch, yaw] = out;
  return { normal, sideways, foreAft, roll, pitch, yaw };
}

/** The same down the rows of a run, arrays of one length. */
export interface TurnColumns {
  readonly load: ArrayLike<number>;
  readonly lean: ArrayLike<number>;
  readonly edgeAngle: ArrayLike<number>;
  /** Load centre ahead of the boot centre, m; that of `centre`, or the boot centre, when absent. */
  readonly fore?: ArrayLike<number>;
}

/** One array a load, one value a row. */
export type BindingLoadColumns = { readonly [name in keyof BindingLoads]: Float64Array };

/**
 * Loads in every row of a run. `share` is this ski's part of each row's load, 1 when absent: a run's load is that of
 * both skis. A row that has no finite reading (skis in the air, say) has no finite loads.
 *
 * @throws FieldError naming what cannot be used
 */
export function bindingLoadColumns(rows: TurnColumns, boot: BootOnSki, share = 1): BindingLoadColumns {
  checkBoot(boot);
  accept('share', share, { from: 0, to: 1 });
  const count = rows.load.length;
  for (const name of ['lean', 'edgeAngle', 'fore'] as const) {
    const found = rows[name]?.length ?? count;
    accept(name, found, { from: count, to: count });
  }
  const make = () => new Float64Array(count);
  const columns = {
    normal: make(),
    sideways: make(),
    foreAft: make(),
    roll: make(),
    pitch: make(),
    yaw: make(),
  };
  const fore = boot.centre?.fore ?? 0;
  const out = new Float64Array(6);
  for (let row = 0; row < count; row++) {
    const ahead = (rows.fore?.[row] ?? fore) - fore;
    loadsAt(share * rows.load[row], rows.lean[row], rows.edgeAngle[row], boot, ahead, out);
    columns.normal[row] = out[0];
    columns.sideways[row] = out[1];
    columns.foreAft[row] = out[2];
    columns.roll[row] = out[3];
    columns.pitch[row] = out[4];
    columns.yaw[row] = out[5];
  }
  return columns;
}

/**
 * Where the push acts, m from the point the moments are about: ahead, to the right, off the base.
 */
export function pushPoint(
  edgeAngle: number,
  { height, halfWaist, centre }: BootOnSki,
): { readonly x: number; readonly y: number; readonly z: number } {
  if (!centre) return { x: 0, y: halfWaist * Math.tanh(edgeAngle / FLAT), z: -height };
  return { x: centre.fore, y: Math.sign(edgeAngle) * centre.aside, z: centre.rise - height };
}

/** Fills `out` with normal, sideways, fore-aft, roll, pitch and yaw; `ahead` moves the push forwards. */
function loadsAt(
  load: number,
  lean: number,
  edgeAngle: number,
  boot: BootOnSki,
  ahead: number,
  out: Float64Array,
): void {
  const { x, y, z } = pushPoint(edgeAngle, boot);
  const normal = load * Math.cos(edgeAngle - lean);
  const sideways = -load * Math.sin(edgeAngle - lean);
  const foreAft = -(boot.friction ?? 0) * load;
  out[0] = normal;
  out[1] = sideways;
  out[2] = foreAft;
  out[3] = y * normal - z * sideways;
  out[4] = (x + ahead) * normal - z * foreAft;
  out[5] = (x + ahead) * sideways - y * foreAft;
}

function checkBoot({ height, halfWaist, friction = 0 }: BootOnSki): void {
  accept('height', height, { from: 0, quantity: 'width' });
  accept('halfWaist', halfWaist, { above: 0, quantity: 'width' });
  accept('friction', friction, { from: 0 });
}
