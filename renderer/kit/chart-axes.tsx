import { scaleLinear } from 'd3';
import type { JSX } from 'preact';
import type { Shown } from '../../core/units/index.ts';
import type { Plot } from './chart.tsx';
import type { Axis } from './series.ts';
import { smallText, textWidth } from './text-width.ts';

interface Props {
  readonly plot: Plot;
  /** Room left and right of the plot that titles may use, px. */
  readonly left: number;
  readonly right: number;
  readonly xAxis: Axis;
  readonly yAxis: Axis;
  readonly xShown: Shown;
  readonly yShown: Shown;
}

/** Ticks that are round in the unit shown: positions in px with their text. */
function ticksOf(domain: readonly number[], shown: Shown, count: number): { held: number; text: string }[] {
  const scale = scaleLinear().domain(domain.map(end => end * shown.factor));
  const format = scale.tickFormat(count);
  return scale
    .ticks(count)
    .map(tick => ({ held: tick / shown.factor, text: format(tick).replaceAll(',', '') }));
}

/** Ticks along `width` px, as many as stand apart in the present type. */
export function ticksAcross(
  domain: readonly number[],
  shown: Shown,
  width: number,
): { held: number; text: string }[] {
  const size = smallText();
  for (let count = Math.max(3, Math.round(width / 80)); ; count--) {
    const ticks = ticksOf(domain, shown, count);
    const widest = Math.max(0, ...ticks.map(({ text }) => textWidth(text, size)));
    const step = ticks.length > 1 ? ticks[1]!.held - ticks[0]!.held : Number.POSITIVE_INFINITY;
    const apart = (Math.abs(step) / Math.abs(domain[1]! - domain[0]!)) * width;
    if (count <= 1 || apart >= widest + size / 2) return ticks;
  }
}

/** Ticks up `height` px. */
export const ticksUp = (domain: readonly number[], shown: Shown, height: number) =>
  ticksOf(domain, shown, Math.max(2, Math.round(height / 48)));

/** Room for tick texts left of a plot, px. */
export function tickRoom(ticks: readonly { readonly text: string }[]): number {
  const size = smallText();
  return Math.max(44, ...ticks.map(({ text }) => Math.ceil(textWidth(text, size)) + 12));
}

/**
 * Title of an axis in `room` px. The unit always stays; what is said in brackets goes first, then the label
 * is cut.
 */
export function axisTitle(label: string, unit: string, room: number): string {
  const size = smallText();
  const titled = (text: string) => (unit ? `${text}, ${unit}` : text);
  const fits = (text: string) => textWidth(titled(text), size) <= room;
  if (fits(label)) return titled(label);
  let short = label.replace(/\s*\([^)]*\)/, '');
  if (fits(short)) return titled(short);
  while (short.length > 1 && !fits(`${short}…`)) short = short.slice(0, -1).trimEnd();
  return titled(`${short}…`);
}

export function ChartAxes({ plot, left, right, xAxis, yAxis, xShown, yShown }: Props): JSX.Element {
  const { width, height } = plot;
  const across = ticksAcross(plot.x.domain(), xShown, width);
  const up = ticksUp(plot.y.domain(), yShown, height);
  const xTitle = axisTitle(xAxis.label, xShown.unit, left + width + right);
  // Right under the axis' end where it fits there, else over the whole width of the figure.
  const beyond = textWidth(xTitle, smallText()) > left + width;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="axes" aria-hidden="true">
      {up.map(({ held, text }) => (
        <g key={text} transform={`translate(0,${plot.y(held)})`}>
          <line class="grid" x2={width} />
          <text x={-8} text-anchor="end" dominant-baseline="central">
            {text}
          </text>
        </g>
      ))}
      {across.map(({ held, text }) => (
        <g key={text} transform={`translate(${plot.x(held)},0)`}>
          <line class="tick" y1={height} y2={height + 4} />
          <text y={height + 16} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <line class="axis" y1={height} y2={height} x2={width} />
      <text class="axis-title" x={beyond ? width + right : width} y={height + 34} text-anchor="end">
        {xTitle}
      </text>
      <text class="axis-title" x={8 - left} y={-14}>
        {axisTitle(yAxis.label, yShown.unit, left - 8 + width + right)}
      </text>
    </g>
  );
}
