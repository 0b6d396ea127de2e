import { FieldError, type FieldFault, plainFault } from '../fault/index.ts';
import { bootedBendingOf, torsionOf } from '../flex/index.ts';
import { edgeCurve } from '../shape/index.ts';
import type { CarvingSki } from './groove.ts';

/** A ski in SI units as a pair file gives it: what its edge, its stiffnesses and its boot are read from. */
type SkiOfFile = Parameters<typeof edgeCurve>[0] &
  Parameters<typeof bootedBendingOf>[0] & {
    readonly camber: number;
    readonly bootCentre: number;
    readonly soleLength: number;
  };

export type CarvingSkiAnswer =
  | { readonly ok: true; readonly ski: CarvingSki }
  | {
      readonly ok: false;
      /** No bending stiffness is given; otherwise a field is given that cannot be used. */
      readonly missing: boolean;
      readonly reason: FieldFault;
    };

/**
 * What the groove needs of a ski, or what keeps it from being had. Throws nothing for a ski whose numbers
 * cannot be used: a stiffness that is not positive somewhere, an edge no curve goes through.
 */
export function carvingSkiOf(ski: SkiOfFile): CarvingSkiAnswer {
  try {
    const bending = bootedBendingOf(ski);
    if (bending === null) {
      return {
        ok: false,
        missing: true,
        reason: { field: 'bending', found: undefined, accepted: { key: 'carve.stiffnessNeeded' } },
      };
    }
    return {
      ok: true,
      ski: {
        edge: edgeCurve(ski),
        bending,
        torsion: torsionOf(ski),
        camber: ski.camber,
        bootCentre: ski.bootCentre,
        soleLength: ski.soleLength,
      },
    };
  } catch (fault) {
    if (fault instanceof FieldError) return { ok: false, missing: false, reason: plainFault(fault) };
    throw fault;
  }
}
