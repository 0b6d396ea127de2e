import {
  angulationOf,
  bootMoment,
  type EdgeBelowFoot,
  edgeAngleLost,
  freeAngulation,
  pushOf,
} from './lever.ts';

/** What a boot on a tipped ski is asked about, SI. */
export interface BootQuestion {
  /** Load on the ski, normal to its base, N. */
  readonly normal: number;
  readonly edgeAngle: number;
  /** Lean ψ of the snow's push from the slope's normal, rad. */
  readonly lean: number;
  readonly halfWaist: number;
  /** Snow to sole and sole to foot bed, m, and whether both are stated by the pair's file. */
  readonly standingHeight: number;
  readonly bootSoleHeight: number;
  readonly heightsStated: boolean;
  /** Lateral stiffness of boot and leg, N·m a radian. */
  readonly stiffness: number;
  /** Centre of the solved pressure; null where the groove is not solved. */
  readonly centre: { readonly aside: number; readonly rise: number } | null;
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
export const footBedOf = (q: BootQuestion): number => q.standingHeight + q.bootSoleHeight;
export const waistOf = (q: BootQuestion): EdgeBelowFoot => ({ aside: q.halfWaist, below: footBedOf(q) });
export const solvedOf = (q: BootQuestion): EdgeBelowFoot | null =>
  q.centre && { aside: q.centre.aside, below: footBedOf(q) - q.centre.rise };
