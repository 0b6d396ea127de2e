import {
  angulationOf,
  bootMoment,
  type EdgeBelowFoot,
  edgeAngleLost,
  freeAngulation,
  pushOf,
} from './lever.ts';

/** A boot on a ski on its edge, SI. */
export interface BootOnEdge {
  readonly halfWaist: number;
  /** Snow to sole and sole to foot bed, m, and whether both are stated by the pair's file. */
  readonly standingHeight: number;
  readonly bootSoleHeight: number;
  readonly heightsStated: boolean;
  /** Centre of the solved pressure; null where the groove is not solved. */
  readonly centre: { readonly aside: number; readonly rise: number } | null;
}

/** The same in a turn: what the boot is asked to carry, SI. */
export interface BootQuestion extends BootOnEdge {
  /** Load on the ski, normal to its base, N. */
  readonly normal: number;
  readonly edgeAngle: number;
  /** Lean ψ of the snow's push from the slope's normal, rad. */
  readonly lean: number;
  /** Lateral stiffness of boot and leg, N·m a radian. */
  readonly stiffness: number;
}

/** What the boot carries, SI. The answers that `bootWorkings` explains. */
export interface BootAnswer {
  /** γ, rad. */
  readonly angulation: number;
  /** N·m, with the push at the waist's edge under the boot centre. */
  readonly moment: number;
  /** N·m, with the push where the solved pressure has its centre; null where the groove is not solved. */
  readonly solvedMoment: number | null;
  /** Angulation at which the boot carries nothing, rad: with the push at the waist's edge, and as solved. */
  readonly freeAngulation: number;
  readonly solvedFreeAngulation: number | null;
  /** rad, from the solved moment where there is one. */
  readonly edgeAngleLost: number;
}

/** Moment, angulation where it vanishes and edge angle lost at once. Throws RangeError for a stiffness not above 0. */
export function bootAnswer(question: BootQuestion): BootAnswer {
  const angulation = angulationIn(question);
  const momentOf = (edge: EdgeBelowFoot) => bootMoment(pushIn(question), edge, angulation);
  const moment = momentOf(waistOf(question));
  const solved = solvedOf(question);
  const solvedMoment = solved && momentOf(solved);
  return {
    angulation,
    moment,
    solvedMoment,
    freeAngulation: freeAngulation(waistOf(question)),
    solvedFreeAngulation: solved && freeAngulation(solved),
    edgeAngleLost: edgeAngleLost(solvedMoment ?? moment, question.stiffness),
  };
}

export const angulationIn = (q: BootQuestion): number => angulationOf(q.edgeAngle, q.lean);
export const pushIn = (q: BootQuestion): number => pushOf(q.normal, angulationIn(q));
export const footBedOf = (q: BootOnEdge): number => q.standingHeight + q.bootSoleHeight;
export const waistOf = (q: BootOnEdge): EdgeBelowFoot => ({ aside: q.halfWaist, below: footBedOf(q) });

/** Where the solved pressure has its centre, as the foot sees it; null where the groove is not solved. */
export const solvedOf = (q: BootOnEdge): EdgeBelowFoot | null =>
  q.centre && { aside: q.centre.aside, below: footBedOf(q) - q.centre.rise };

/** Where the push passes the foot: as solved, else at the waist's edge under the boot centre. */
export const edgeBelowFoot = (q: BootOnEdge): EdgeBelowFoot => solvedOf(q) ?? waistOf(q);
