import { formatQuantity } from '../../../core/units/index.ts';
import { grooveOf, radiusOf, turnOf, unbendable } from '../../answers/index.ts';
import { type ChosenPair, conditions, t, view } from '../../state/index.ts';

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
  const byRule = t('edge.why.byRule', {
    sidecut: metres(sidecut),
    edge: angle,
    rule: metres(rule),
  });
  if (unbendable(pair)) return `${byRule} ${t('edge.why.needsStiffness')}`;
  const groove = grooveOf(pair);
  if (solved === null || groove === null) return byRule;
  const change = solved / rule - 1;
  const percent = formatQuantity(Math.abs(change), 'share', {
    decimals: Math.abs(change) < 0.095 ? 1 : 0,
  }).text;
  if (Math.abs(change) < SAME) return `${byRule} ${t('edge.why.same')}`;
  if (change < 0) return `${byRule} ${t('edge.why.tighter', { percent })}`;
  const open = Math.max(groove.twistTip, groove.twistTail);
  // The twist is told, not blamed: the same ski rigid in torsion turns wider too.
  if (open < SLIGHT_TWIST) return `${byRule} ${t('edge.why.wider', { percent })}`;
  return `${byRule} ${t('edge.why.widerTwisted', { percent, open: { quantity: 'angle', value: open } })}`;
}
