import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { edgeOf, type Placing, sidecutOf } from '../../answers/index.ts';
import { type ChosenPair, t, view } from '../../state/index.ts';

/**
 * The circle of the sidecut radius where it runs along the edge, carried on past both ends. It is laid
 * through the narrowest point, turned by the taper.
 */
export function FittedArc({
  pair,
  place,
  width,
}: {
  pair: ChosenPair;
  place: Placing;
  width: number;
}): JSX.Element | null {
  const cut = sidecutOf(pair.pair);
  if (!(cut.radius > 0) || !Number.isFinite(cut.radius)) return null;
  const lowest = edgeOf(pair.pair).halfWidth(cut.waistStation);
  const from = cut.waistStation - 0.62 * pair.ski.contactLength - 0.2;
  const to = cut.waistStation + 0.62 * pair.ski.contactLength + 0.2;
  const points: string[] = [];
  for (let at = 0; at <= 80; at++) {
    const x = from + ((to - from) * at) / 80;
    const u = x - cut.waistStation;
    const y = lowest + (u * u) / (cut.radius + Math.sqrt(cut.radius ** 2 - u * u));
    const px = place.x(x);
    if (px >= 0 && px <= width) points.push(`${px.toFixed(1)},${place.y(y).toFixed(1)}`);
  }
  const radius = formatQuantity(cut.radius, 'radius', {
    system: view.value.system,
    uncertainty: cut.radiusUncertainty,
  });
  return (
    <g class="fitted-arc">
      <path d={`M${points.join('L')}`} />
      <text class="halo" x={place.x(cut.waistStation)} y={place.y(lowest) - 44} text-anchor="middle">
        {t('shape.arcOf', { radius: `${radius.value}\u00a0${radius.unit}` })}
      </text>
    </g>
  );
}
