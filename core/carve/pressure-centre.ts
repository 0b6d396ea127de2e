import type { CarvingSki, Equilibrium } from './groove.ts';
import { wedgeSnow } from './wedge-snow.ts';

/** Where the snow's pressure on a solved ski acts, as seen from the base under the boot centre. SI. */
export interface PressureCentre {
  /** Sum of the line load, N, normal to the base. */
  readonly load: number;
  /** Ahead of the boot centre, m. */
  readonly fore: number;
  /**
   * From the ski's midline towards the loaded edge, m. Tip and tail, being wider, move it beyond half the waist
   * where they carry; soft snow, which bears on a broad strip, moves it back.
   */
  readonly aside: number;
  /** Over the base under the boot centre, towards the skier, m: the ends of a bent ski are higher than its middle. */
  readonly rise: number;
}

/**
 * Lever arm of the snow's line load about the midline at one node, m. The pressure grows with depth, so its
 * resultant stands inside the edge. A node that carries nothing has no arm.
 */
export function pressureArm(
  ski: CarvingSki,
  { x, groove, localEdgeAngle, conditions }: Equilibrium,
  node: number,
  scratch: Float64Array,
): number {
  wedgeSnow.evaluate(
    groove[node],
    ski.edge.halfWidth(x[node]),
    localEdgeAngle[node],
    conditions.hardness,
    scratch,
  );
  return scratch[0] > 0 ? scratch[3] / scratch[0] : 0;
}

/** Centre of the solved pressure. The ski must be the one the equilibrium was solved for. */
export function pressureCentre(ski: CarvingSki, equilibrium: Equilibrium): PressureCentre {
  const { x, lineLoad, height, twist } = equilibrium;
  const scratch = new Float64Array(6);
  const last = x.length - 1;
  let boot = 0;
  let load = 0;
  let fore = 0;
  let aside = 0;
  let rise = 0;
  for (let i = 0; i <= last; i++) {
    if (Math.abs(x[i] - ski.bootCentre) < Math.abs(x[boot] - ski.bootCentre)) boot = i;
    // The trapezoid rule returns load and moment of this line load exactly (see `Equilibrium.lineLoad`).
    const force = 0.5 * lineLoad[i] * (x[Math.min(i + 1, last)] - x[Math.max(i - 1, 0)]);
    const arm = pressureArm(ski, equilibrium, i, scratch);
    load += force;
    fore += force * (x[i] - ski.bootCentre);
    aside += force * arm * Math.cos(twist[i]);
    rise += force * (height[i] + arm * Math.sin(twist[i]));
  }
  return { load, fore: fore / load, aside: aside / load, rise: rise / load - height[boot] };
}
