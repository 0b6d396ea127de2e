/**
 * The one thing a run needs to know of a pair: the radius it turns at an edge angle and a load.
 */

import {
  cosineTurnSurface,
  type EvenPress,
  type RadiusTable,
  type TurnSurface,
  tableLookup,
  tableTurnSurface,
} from '../carve/index.ts';
import { FieldError } from '../fault/index.ts';
import type { GrooveWall, OwnCurvature } from '../skier/index.ts';

export interface TurnRadius {
  /** Turn radius, m, at an edge angle (rad, ≥ 0) and the load on the ski (N). */
  radius(edgeAngle: number, load: number): number;
  /** Twist that lowers the edge angle at the tip, rad. */
  twistTip?(edgeAngle: number, load: number): number;
  /** Twist that lowers the edge angle at the tail, rad. */
  twistTail?(edgeAngle: number, load: number): number;
}

/** The same with its curvature κ = 1/R and its wall twice differentiable: what a whole run is solved with. */
export interface CarvedTurn extends TurnRadius, OwnCurvature, GrooveWall {}

/**
 * Cosine rule R = R_sc cosθ (Howe; Lind & Sanders, from memory): rigid snow, any load. The wall is that of an even
 * press; endless without one.
 */
export function cosineTurn(sidecutRadius: number, press?: EvenPress): CarvedTurn {
  if (!(sidecutRadius > 0)) {
    throw new FieldError({
      field: 'sidecutRadius',
      found: sidecutRadius,
      accepted: { above: 0, quantity: 'radius' },
    });
  }
  return {
    radius: edgeAngle => sidecutRadius * Math.cos(edgeAngle),
    ...surfaceOf(cosineTurnSurface(sidecutRadius, press)),
  };
}

/**
 * The solved groove's radius, looked up as `tableLookup` does. Outside the table the border's values stand,
 * except that a ski tilted beyond the last angle closes as the cosine rule does from there.
 *
 * @throws FieldError when the table has fewer than two values a side, is not ascending, or holds a value that
 *   is not a number
 */
export function tableTurn(table: RadiusTable): CarvedTurn {
  const { edgeAngles, loads } = table;
  checkAxis('edgeAngles', edgeAngles);
  checkAxis('loads', loads);
  if (!(loads[0] > 0)) {
    throw new FieldError({ field: 'loads', found: loads[0], accepted: { above: 0, quantity: 'force' } });
  }
  for (const name of ['radii', 'twistTips', 'twistTails', 'wallAreas'] as const) {
    const bad = table[name].findIndex(v => !Number.isFinite(v));
    if (bad >= 0 || table[name].length !== edgeAngles.length * loads.length) {
      const found = table[name][bad] ?? [table[name].length];
      throw new FieldError({ field: name, found, accepted: { key: 'accepted.oneForEachPoint' } });
    }
  }
  return { ...tableLookup(table), ...surfaceOf(tableTurnSurface(table)) };
}

const surfaceOf = ({ curvature, wallArea }: TurnSurface) => ({ curvature, wallArea });

/** What a turn radius is worked out from, as plain data: a solved table, or a sidecut radius (m) and an even press. */
export type TurnBasis =
  | { readonly table: RadiusTable }
  | { readonly sidecutRadius: number; readonly press?: EvenPress };

/** @throws FieldError as `tableTurn` and `cosineTurn` do */
export const turnOf = (basis: TurnBasis): CarvedTurn =>
  'table' in basis ? tableTurn(basis.table) : cosineTurn(basis.sidecutRadius, basis.press);

function checkAxis(name: string, axis: Float64Array): void {
  if (axis.length < 2) {
    throw new FieldError({ field: name, found: [axis.length], accepted: { key: 'accepted.twoOrMore' } });
  }
  for (let i = 1; i < axis.length; i++) {
    if (!(axis[i] > axis[i - 1])) {
      throw new FieldError({ field: name, found: axis[i], accepted: { above: axis[i - 1] } });
    }
  }
}
