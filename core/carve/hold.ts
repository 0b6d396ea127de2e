import type { Equilibrium } from './groove.ts';

/** Which part of the ski lets go of its shelf first. */
export type LostFirst = 'tip' | 'boot' | 'tail';

/** How securely the shelf cut by the base carries the ski along its length. */
export interface Hold {
  /** θ − φ(x) − b − ψ at every node, rad; negative slips. */
  readonly along: Float64Array;
  readonly tip: number;
  readonly boot: number;
  readonly tail: number;
  /** Least value anywhere, rad, and where it is, m from the rear contact point. */
  readonly least: number;
  readonly leastAt: number;
  /** The part holding least; the boot when all three are equal (a ski rigid in torsion). */
  readonly lostFirst: LostFirst;
  /** Some part slips. */
  readonly slips: boolean;
  /** The part under the boot slips, and with it the ski. */
  readonly skids: boolean;
}

/** Hold of one point, rad: the shelf must be steeper than the resultant leans. */
export function holdAt(localEdgeAngle: number, baseBevel: number, lean: number): number {
  return localEdgeAngle - baseBevel - lean;
}

/**
 * Hold along the edge of a solved ski, given the lean ψ of the resultant (rad) and the base bevel b (rad).
 * A shelf steeper than the lean pushes back; a flatter one lets that part slide. (Brown, On the skiability of
 * snow, ASTM STP 1022 (1989), finds a critical edge angle between holding and skidding.)
 */
export function holdAlong(
  equilibrium: Equilibrium,
  bootCentre: number,
  lean: number,
  baseBevel: number,
): Hold {
  const { x, localEdgeAngle } = equilibrium;
  const along = new Float64Array(x.length);
  let leastIndex = 0;
  let bootIndex = 0;
  for (let i = 0; i < x.length; i++) {
    along[i] = holdAt(localEdgeAngle[i], baseBevel, lean);
    if (along[i] < along[leastIndex]) leastIndex = i;
    if (Math.abs(x[i] - bootCentre) < Math.abs(x[bootIndex] - bootCentre)) bootIndex = i;
  }
  const tail = along[0];
  const tip = along[x.length - 1];
  const boot = along[bootIndex];
  let lostFirst: LostFirst = 'boot';
  if (Math.min(tip, tail) < boot) lostFirst = tip < tail ? 'tip' : 'tail';
  return {
    along,
    tip,
    boot,
    tail,
    least: along[leastIndex],
    leastAt: x[leastIndex],
    lostFirst,
    slips: along[leastIndex] < 0,
    skids: boot < 0,
  };
}
