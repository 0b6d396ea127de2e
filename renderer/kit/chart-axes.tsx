import { scaleLinear } from 'd3';
import type { JSX } from 'preact';
import type { Shown } from '../format/index.ts';
import type { Plot } from './chart.tsx';
import type { Axis } from './series.ts';

interface Props {
  readonly plot: Plot;
  readonly xAxis: Axis;
  readonly yAxis: Axis;
  readonly xShown: Shown;
  readonly yShown: Shown;
}

/** Ticks that are round in the unit shown: positions in px with their text. */
export function ticksOf(
  domain: readonly number[],
  shown: Shown,
  count: number,
): { held: number; text: string }[] {
  const scale = scaleLinear().domain(domain.map(end => end * shown.factor));
  const format = scale.tickFormat(count);
  return scale
    .ticks(count)
    .map(tick => ({ held: tick / shown.factor, text: format(tick).replaceAll(',', '') }));
}

const titled = (axis: Axis, shown: Shown) => (shown.unit ? `${axis.label}, ${shown.unit}` : axis.label);

export function ChartAxes({ plot, xAxis, yAxis, xShown, yShown }: Props): JSX.Element {
  const { width, height } = plot;
  const across = ticksOf(plot.x.domain(), xShown, Math.max(3, Math.round(width / 80)));
  const up = ticksOf(plot.y.domain(), yShown, Math.max(2, Math.round(height / 48)));
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
      <text class="axis-title" x={width} y={height + 34} text-anchor="end">
        {titled(xAxis, xShown)}
      </text>
      <text class="axis-title" x={-36} y={-14}>
        {titled(yAxis, yShown)}
      </text>
    </g>
  );
}
