import * as z from 'zod';
import { acceptingShape, quantity } from './fields.ts';

/** Stiffness a plate or a sole adds; a plate that adds next to nothing is a plate all the same. */
export const addedNewtonM2 = (meaning: string) => quantity(0, 20000, 'N·m²', meaning);

export const PLATE_LENGTH_MM = { from: 100, to: 1200 } as const;

/** A plate as it lies on the ski: where it begins, how long it is and what it adds with its rubber. */
export const plateSchema = z.looseObject(
  {
    fromTailMm: quantity(0, 2500, 'mm', 'Rear end of the plate, from the rear contact point'),
    lengthMm: quantity(PLATE_LENGTH_MM.from, PLATE_LENGTH_MM.to, 'mm', 'Length of the plate'),
    newtonM2: addedNewtonM2('Bending stiffness EI that plate and rubber add over that length'),
    torsionNewtonM2: addedNewtonM2('Torsional stiffness GJ they add there; 0 when absent').optional(),
  },
  acceptingShape('{ fromTailMm, lengthMm, newtonM2, torsionNewtonM2? }'),
);
