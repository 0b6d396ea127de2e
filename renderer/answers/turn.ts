import { cosineRadius, type RigidSki } from '../../core/carve/index.ts';
import { type ChosenPair, ski } from '../state/index.ts';
import { grooveOf, unbendable } from './grooves.ts';
import { request } from './request.ts';
import { radiusOf, sidecutOf } from './sidecut.ts';

export interface Turn {
  /** The bent ski's radius, m; null when it is not solved. */
  readonly solved: number | null;
  /** The cosine rule's, m; null for a straight edge. */
  readonly rule: number | null;
  /** The one to show: solved, or the rule's for a pair with no stiffness. */
  readonly radius: number | null;
}

export function turnOf(pair: ChosenPair): Turn {
  const sidecut = radiusOf(pair.pair);
  const rule = sidecut === null ? null : cosineRadius(sidecut, request.value.edgeAngle);
  const found = grooveOf(pair)?.turnRadius ?? null;
  const solved = found !== null && found > 0 && Number.isFinite(found) ? found : null;
  return { solved, rule, radius: solved ?? (unbendable(pair) ? rule : null) };
}

/** A pair as the rigid-snow formulas know it. */
export function rigidOf(pair: ChosenPair): RigidSki {
  const { camber, baseBevel, sideAngle } = ski(pair.pair);
  const cut = sidecutOf(pair.pair);
  return { sidecutRadius: cut.radius, sidecutDepth: cut.depth, camber, baseBevel, sideAngle };
}
