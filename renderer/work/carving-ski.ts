import type { CarvingSki } from '../../core/carve/index.ts';
import { bendingOf, torsionOf } from '../../core/flex/index.ts';
import { type Pair, skiOf } from '../../core/pair/index.ts';
import { edgeCurve } from '../../core/shape/index.ts';

/** What the groove needs of a pair; null when the pair has no bending stiffness. */
export function carvingSkiOf(pair: Pair): CarvingSki | null {
  const ski = skiOf(pair);
  const bending = bendingOf(ski);
  if (!bending) return null;
  return {
    edge: edgeCurve(ski),
    bending,
    torsion: torsionOf(ski),
    camber: ski.camber,
    bootCentre: ski.bootCentre,
    soleLength: ski.soleLength,
  };
}
