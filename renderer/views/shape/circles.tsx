import type { JSX } from 'preact';
import { formatQuantity, shownAs } from '../../../core/units/index.ts';
import { radiusOf } from '../../answers/index.ts';
import { Figure, PairBadge, type Size, spread } from '../../kit/index.ts';
import { activePair, type ChosenPair, chosenPairs, t, view } from '../../state/index.ts';

interface Circle {
  readonly pair: ChosenPair;
  readonly radius: number;
}

/** The arcs drawn out to whole circles, all touching where the skis lie, true to scale. */
export function Circles(): JSX.Element {
  const circles = chosenPairs.value.flatMap((pair): Circle[] => {
    const radius = radiusOf(pair.pair);
    return radius === null ? [] : [{ pair, radius }];
  });
  return (
    <Figure
      title={t('shape.wholeCircle')}
      description={circles
        .map(({ pair, radius }) =>
          t('shape.circleOf', { name: pair.name, radius: { quantity: 'radius', value: radius } }),
        )
        .join(', ')}
      rows={() => [
        [t('common.columnPair'), t('common.columnSidecutRadius')],
        ...circles.map(({ pair, radius }) => [pair.name, radius.toFixed(3)]),
      ]}
    >
      {size => <Drawing circles={circles} size={size} />}
    </Figure>
  );
}

function Drawing({ circles, size }: { circles: readonly Circle[]; size: Size }): JSX.Element {
  const { system } = view.value;
  const greatest = Math.max(1, ...circles.map(each => each.radius));
  const perMetre = Math.min((size.height - 40) / (2 * greatest), (size.width - 110) / (2 * greatest));
  const bottom = size.height - 24;
  const centre = 12 + greatest * perMetre;
  const unit = shownAs('radius', system);
  const bar = system === 'metric' ? 10 : 10 * 0.9144;
  const inOrder = [...circles].sort((a, b) => b.radius - a.radius);
  // Labels stand on a slant through the circles' upper right, moved apart where they would overlap.
  const slanted = inOrder.map(({ radius }) => bottom - radius * perMetre * (1 + Math.SQRT1_2));
  const places = spread(slanted, 21, 12, bottom - 12);
  return (
    <g>
      {inOrder.map(({ pair, radius }, at) => {
        const active = pair.id === activePair.value?.id;
        const r = radius * perMetre;
        return (
          <g key={pair.id}>
            <circle
              class="whole-circle"
              cx={centre}
              cy={bottom - r}
              r={r}
              stroke={pair.mark.colour}
              stroke-dasharray={pair.mark.dash}
              stroke-width={active ? 2.5 : 1.5}
            />
            <g transform={`translate(${centre + r * Math.SQRT1_2 + 10},${places[at]! - 6})`}>
              <PairBadge mark={pair.mark} svg />
              <text class="halo" x={21} dominant-baseline="central" fill={pair.mark.colour}>
                {formatQuantity(radius, 'radius', { system }).text}
              </text>
            </g>
          </g>
        );
      })}
      {circles.map(({ pair }) => (
        <line
          key={pair.id}
          x1={centre - pair.ski.bootCentre * perMetre}
          x2={centre + (pair.ski.contactLength - pair.ski.bootCentre) * perMetre}
          y1={bottom}
          y2={bottom}
          stroke={pair.mark.colour}
          stroke-width={4}
        />
      ))}
      <text x={centre} y={bottom + 17} text-anchor="middle">
        {t('shape.toScale')}
      </text>
      <g class="axes" transform={`translate(${size.width - 12 - bar * perMetre},${bottom})`}>
        <path class="scale-bar" d={`M0,-5v5h${bar * perMetre}v-5`} />
        <text x={(bar * perMetre) / 2} y={17} text-anchor="middle">
          {`${(bar * unit.factor).toFixed(0)}\u00a0${unit.unit}`}
        </text>
      </g>
    </g>
  );
}
