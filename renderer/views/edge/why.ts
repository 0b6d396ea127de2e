import { formatQuantity } from '../../../core/units/index.ts';
import { grooveOf, radiusOf, turnOf, unbendable } from '../../answers/index.ts';
import { type ChosenPair, conditions, view } from '../../state/index.ts';

/** Differences from the rule smaller than this share are not worth a cause. */
const SAME = 0.005;

/** Twist at the ends that is too little to be told, rad. */
const SLIGHT_TWIST = 0.002;

/** The turn in one or two sentences: what the rule gives, and what bending in this snow makes of it. */
export function whyThisTurn(pair: ChosenPair): string | undefined {
  const sidecut = radiusOf(pair.pair);
  const { solved, rule } = turnOf(pair);
  if (sidecut === null || rule === null) return undefined;
  const { system } = view.value;
  const metres = (value: number) => formatQuantity(value, 'radius', { system }).text;
  const angle = formatQuantity(conditions.value.edgeDeg, 'angleDeg').text.replace('.0', '');
  const byRule = `Cut to ${metres(sidecut)}; tipped to ${angle} that makes ${metres(sidecut)} × cos ${angle} = ${metres(rule)}.`;
  if (unbendable(pair))
    return `${byRule} So says the rule for rigid snow; what this snow does to it needs a bending stiffness.`;
  const groove = grooveOf(pair);
  if (solved === null || groove === null) return byRule;
  const change = solved / rule - 1;
  const percent = `${formatQuantity(Math.abs(change), 'share', { decimals: Math.abs(change) < 0.095 ? 1 : 0 }).text}`;
  if (Math.abs(change) < SAME) return `${byRule} Bent into this snow it does the same.`;
  if (change < 0)
    return `${byRule} This snow gives way under the boot, the ski bends further, and turns ${percent} tighter.`;
  const wider = `${byRule} As this load and snow bend it, it turns ${percent} wider`;
  const open = Math.max(groove.twistTip, groove.twistTail);
  // The twist is told, not blamed: the same ski rigid in torsion turns wider too.
  if (open < SLIGHT_TWIST) return `${wider}.`;
  return `${wider}; its ends twist open by up to ${formatQuantity(open, 'angle').text}.`;
}
