import {
  type CarveConditions,
  type CarvingSki,
  cosineRadius,
  type Equilibrium,
  REBOUND,
  carvingSkiOf as readCarvingSki,
} from '../../core/carve/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { DEGREE, MM, N_PER_MM3 } from '../../core/units/index.ts';
import { faultOf, lacking } from './fault.ts';
import { rounded } from './quantity.ts';

/** @throws InputFault when the file states no bending stiffness, or one that cannot be used */
export function carvingSkiOf(file: string, ski: Ski): CarvingSki {
  const answer = readCarvingSki(ski);
  if (answer.ok) return answer.ski;
  throw answer.missing ? lacking(file, { key: 'flex.needsBending' }) : faultOf(file, [answer.reason]);
}

/** The readings of one equilibrium under the contract's names. */
export function groovePoint(sidecutRadius: number, { conditions, ...found }: Equilibrium) {
  return {
    ...conditionsOf(conditions),
    cosineRadiusM: rounded(cosineRadius(sidecutRadius, conditions.edgeAngle)),
    turnRadiusM: rounded(found.turnRadius),
    rearRadiusM: rounded(found.rear.radius),
    frontRadiusM: rounded(found.front.radius),
    rearTooShort: found.rear.tooShort,
    frontTooShort: found.front.tooShort,
    // The name the same radius had beside a turn radius of another fit; scripts may still ask for it.
    wholeRadiusM: rounded(found.turnRadius),
    maxPenetrationMm: rounded(found.maxPenetration / MM),
    twistTipDeg: rounded(found.twistTip / DEGREE),
    twistTailDeg: rounded(found.twistTail / DEGREE),
    iterations: found.iterations,
    residual: rounded(found.residual),
  };
}

function conditionsOf({ edgeAngle, load, hardness, rebound = REBOUND }: CarveConditions) {
  return {
    edgeDeg: rounded(edgeAngle / DEGREE),
    loadN: rounded(load),
    hardnessNPerMm3: rounded(hardness / N_PER_MM3),
    reboundMm: rounded(rebound / MM),
  };
}

/** Load, depth and edge angle along the edge. */
export function grooveProfile({ x, lineLoad, penetration, localEdgeAngle }: Equilibrium) {
  return Array.from(x, (station, i) => ({
    fromTailMm: rounded(station / MM),
    lineLoadNPerM: rounded(lineLoad[i]),
    penetrationMm: rounded(penetration[i] / MM),
    edgeDeg: rounded(localEdgeAngle[i] / DEGREE),
  }));
}
