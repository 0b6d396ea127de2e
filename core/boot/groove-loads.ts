import { type CarvingSki, type Equilibrium, pressureCentre } from '../carve/index.ts';
import { type BindingLoads, type BootOnSki, bindingLoads } from './binding-loads.ts';
import { pushOf } from './lever.ts';

/** What the groove does not know of the turn it stands in. */
export interface GrooveTurn {
  /** Lean ψ of the snow's push towards the turn's centre, rad. */
  readonly lean: number;
  /** As in `BootOnSki`. */
  readonly friction?: number;
  /** Of the point the moments are about, over the base, m. */
  readonly height: number;
}

/**
 * Loads that a solved ski hands to the binding in a right turn; a left turn mirrors sideways, roll and yaw. The
 * equilibrium gives the pressure normal to the base and where it acts; the push leans by ψ, so its part along the
 * base is that pressure times −tan(θ − ψ).
 *
 * @throws RangeError when the push would have to act along the base: θ − ψ of 90 degrees or more
 */
export function grooveLoads(ski: CarvingSki, equilibrium: Equilibrium, turn: GrooveTurn): BindingLoads {
  const { edgeAngle } = equilibrium.conditions;
  const centre = pressureCentre(ski, equilibrium);
  const boot: BootOnSki = {
    height: turn.height,
    halfWaist: ski.edge.halfWidth(ski.bootCentre),
    friction: turn.friction,
    centre,
  };
  return bindingLoads({ load: pushOf(centre.load, edgeAngle - turn.lean), lean: turn.lean, edgeAngle }, boot);
}
