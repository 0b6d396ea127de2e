import {
  edgeBelowFoot,
  footBedWorking,
  freeAngulation,
  freeAngulationWorking,
  solvedFreeAngulationWorking,
} from '../../core/boot/index.ts';
import { type CarvingSki, type Equilibrium, pressureCentre } from '../../core/carve/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { DEGREE, MM } from '../../core/units/index.ts';
import type { Working } from '../../core/working/index.ts';
import { rounded } from './quantity.ts';

/**
 * Where the snow's pressure acts, and the angulation at which its push passes through the foot: of this answer, in
 * the JSON beside the table's columns.
 */
export function bootPoint(ski: Ski, carving: CarvingSki, equilibrium: Equilibrium) {
  const centre = pressureCentre(carving, equilibrium);
  return {
    pressureFromMidlineMm: rounded(centre.aside / MM),
    pressureOverBaseMm: rounded(centre.rise / MM),
    bootFreeAngulationDeg: rounded(freeAngulation(edgeBelowFoot({ ...bootOnEdge(ski), centre })) / DEGREE),
  };
}

/** How that angulation comes about, by the waist alone and as solved. */
export function bootWorkings(ski: Ski, carving: CarvingSki, equilibrium: Equilibrium): Working[] {
  const boot = { ...bootOnEdge(ski), centre: pressureCentre(carving, equilibrium) };
  return [
    footBedWorking(boot),
    freeAngulationWorking(boot),
    ...[solvedFreeAngulationWorking(boot)].flatMap(each => each ?? []),
  ];
}

function bootOnEdge({ waistWidth, standingHeight, bootSoleHeight, heightsStated }: Ski) {
  return { halfWaist: waistWidth / 2, standingHeight, bootSoleHeight, heightsStated };
}
