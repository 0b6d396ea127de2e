import { type MeasuringUncertainty, threeWidthUncertainty } from '../shape/index.ts';
import { rulebookRadius } from './control-radius.ts';

/**
 * Standard uncertainty of `rulebookRadius`, all in metres: that of three widths with the waist midway, since
 * the rulebook's formula takes it to be there.
 */
export function rulebookUncertainty(
  distance: number,
  front: number,
  rear: number,
  waist: number,
  uncertainty: MeasuringUncertainty,
): number {
  return threeWidthUncertainty(rulebookRadius(distance, front, rear, waist), distance, 0.5, uncertainty);
}
