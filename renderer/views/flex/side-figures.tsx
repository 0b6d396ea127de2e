import type { JSX } from 'preact';
import { formatQuantity } from '../../format/index.ts';
import { PairBadge, spread } from '../../kit/index.ts';
import { view } from '../../state/index.ts';
import type { Rest } from './bench.ts';
import type { Shown, SideScale } from './side-scale.ts';

/** How far each ski came down under the press, beside it, and the two scales of the drawing. */
export function SideFigures(props: {
  shown: readonly Shown[];
  lead: Shown;
  scale: SideScale;
  rest: Rest;
  width: number;
}): JSX.Element {
  const { shown, lead, scale, rest, width } = props;
  const { system } = view.value;
  const x = scale.x(lead.pair, lead.shape.at);
  const top = scale.y(lead.shape.freeAt);
  const end = scale.y(lead.shape.pressedAt);
  const wanted = shown.map(({ shape }) => scale.y(shape.pressedAt) + (rest === 'bench' ? 20 : -22));
  const places =
    rest === 'bench'
      ? spread(wanted, 20, 0, scale.bottom + 2)
      : wanted.map((_, at) => top - 22 - 20 * (shown.length - 1 - at));
  return (
    <g>
      {end - top > 10 && rest === 'bench' && (
        <path class="came-down" d={`M${x - 26},${top}h10M${x - 21},${top}V${end}M${x - 26},${end}h10`} />
      )}
      {shown.map(({ pair, shape }, at) => (
        <g key={pair.id} transform={`translate(${x + (rest === 'bench' ? 16 : 58)},${places[at]})`}>
          <PairBadge mark={pair.mark} svg />
          <text class="halo" x={21} dominant-baseline="central" fill={pair.mark.colour} font-weight="600">
            {`${formatQuantity(shape.deflection, 'deflection', { system, decimals: system === 'metric' ? 1 : 2 }).text} down`}
          </text>
        </g>
      ))}
      <ScaleBars scale={scale} x={width - 14} y={RULE_Y} />
    </g>
  );
}

const RULE_Y = 30;

/** Lengths and heights are not drawn alike: a bar for each says by how much. */
function ScaleBars({ scale, x, y }: { scale: SideScale; x: number; y: number }): JSX.Element {
  const { system } = view.value;
  const unit = system === 'metric' ? 1e-3 : 0.0254;
  const along = (system === 'metric' ? 100 : 4) * unit;
  const heights = system === 'metric' ? [50, 20, 10, 5, 2] : [2, 1, 0.5, 0.2, 0.1];
  const upright =
    (heights.find(each => each * unit * scale.perMetre * scale.times <= 44) ?? heights.at(-1)!) * unit;
  const wide = along * scale.perMetre;
  const tall = upright * scale.perMetre * scale.times;
  const text = (held: number, decimals: number) => formatQuantity(held, 'station', { system, decimals }).text;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="scale-bars" aria-hidden="true">
      <path d={`M${x - wide},${y + tall}H${x}V${y}`} />
      <path d={`M${x - wide},${y + tall - 4}v8M${x - 4},${y}h8`} />
      <text x={x - 9} y={y + tall / 2} text-anchor="end" dominant-baseline="central">
        {text(upright, system === 'metric' ? 0 : 1)}
      </text>
      <text x={x - wide / 2} y={y + tall + 15} text-anchor="middle">
        {text(along, 0)}
      </text>
    </g>
  );
}
