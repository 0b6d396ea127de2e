import type { Pair } from '../../../core/pair/index.ts';
import type { Field } from './bench.ts';
import type { LayupStiffness } from './layup-edits.ts';

/** Layers, and the stiffnesses of the pair worked out from them that an edit reaches. */
export interface LayupBehind {
  readonly layup: LayupStiffness;
  readonly reaches: readonly Field[];
  /** The stiffnesses worked out from layers, these or others. */
  readonly layered: readonly Field[];
  /** One section is stated for both stiffnesses. */
  readonly shared: boolean;
}

/**
 * The layers to show for a pair: those of `wanted` where it has any, else of its other stiffness; null where
 * neither is worked out from layers. A ski has one section, so layers stated for both are edited for both,
 * unless they are taken `apart`.
 */
export function layupBehind(pair: Pair, wanted: Field, apart: boolean): LayupBehind | null {
  const layered = (['bending', 'torsion'] as const).filter(each => pair[each]?.kind === 'layup');
  const shown = layered.includes(wanted) ? wanted : layered[0];
  if (shown === undefined) return null;
  const shared = layered.length === 2 && JSON.stringify(pair.bending) === JSON.stringify(pair.torsion);
  return {
    layup: pair[shown] as LayupStiffness,
    reaches: shared && !apart ? layered : [shown],
    layered,
    shared,
  };
}
