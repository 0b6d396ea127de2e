import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import type { Rest } from '../../answers/index.ts';
import { PairBadge, spread } from '../../kit/index.ts';
import { t, view } from '../../state/index.ts';
import type { Shown, SideScale } from './side-scale.ts';

/** How far each ski came down under the press, beside it, and the two scales of the drawing. */
export function SideFigures(props: {
  shown: readonly Shown[];
  lead: Shown;
  scale: SideScale;
  rest: Rest;
}): JSX.Element {
  const { shown, lead, scale, rest } = props;
  const { system } = view.value;
  const x = scale.x(lead.pair, lead.shape.at);
  const top = scale.y(lead.shape.freeAt);
  const end = scale.y(lead.shape.pressedAt);
  // Under the lowest ski, so that no figure lies on a line.
  const lowest = Math.max(...shown.map(({ shape }) => scale.y(shape.pressedAt)));
  const wanted = shown.map((_, at) => lowest + 20 + 20 * at);
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
        <g key={pair.id} transform={`translate(${x + (rest === 'bench' ? 16 : 76)},${places[at]})`}>
          <PairBadge mark={pair.mark} svg />
          <text class="halo" x={21} dominant-baseline="central" fill={pair.mark.colour} font-weight="600">
            {t('flex.down', {
              deflection: {
                quantity: 'deflection',
                value: shape.deflection,
                decimals: system === 'metric' ? 1 : 2,
              },
            })}
          </text>
        </g>
      ))}
      <ScaleBars scale={scale} />
    </g>
  );
}

const RULE_Y = 36;
/** Lines of the two labels keep this far apart, px. */
const LINE = 20;

/** Lengths and heights are not drawn alike: a bar for each says by how much. */
function ScaleBars({ scale }: { scale: SideScale }): JSX.Element {
  const { system } = view.value;
  const unit = system === 'metric' ? 1e-3 : 0.0254;
  const along = (system === 'metric' ? 100 : 4) * unit;
  const heights = system === 'metric' ? [200, 100, 50, 20, 10, 5, 2] : [8, 4, 2, 1, 0.5, 0.2, 0.1];
  const upright =
    (heights.find(each => each * unit * scale.perMetre * scale.times <= 44) ?? heights.at(-1)!) * unit;
  const wide = along * scale.perMetre;
  const [x, y] = [12, RULE_Y];
  const tall = upright * scale.perMetre * scale.times;
  const text = (held: number, decimals: number) => formatQuantity(held, 'station', { system, decimals }).text;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="scale-bars" aria-hidden="true">
      <path d={`M${x},${y}V${y + tall}H${x + wide}`} />
      <path d={`M${x - 4},${y}h8M${x + wide},${y + tall - 4}v8`} />
      <text x={x + 9} y={y + Math.min(4, tall - LINE)} dominant-baseline="central">
        {text(upright, system === 'metric' ? 0 : 1)}
      </text>
      <text x={x + wide + 8} y={y + tall} dominant-baseline="central">
        {`${text(along, 0)}, ${scale.times === 1 ? t('flex.scale.true') : t('flex.scale.heights', { times: scale.times })}`}
      </text>
    </g>
  );
}
