import type { JSX } from 'preact';
import type { Plot } from './chart.tsx';
import { PairBadge } from './pair-badge.tsx';
import type { Series } from './series.ts';
import { spread } from './spread.ts';
import { smallText, textWidth } from './text-width.ts';

const BADGE = 22;
const GAP = 14;

/** Room at the right for the labels: names where the chart is wide enough, else letters only. */
export function labelRoom(series: readonly Series[], width: number): number {
  const size = smallText();
  const widths = series.map(each => {
    const name = width >= 460 || !each.mark ? textWidth(shorten(each.label), size, 600) : 0;
    return (each.mark ? BADGE : 0) + name;
  });
  return GAP + Math.ceil(Math.max(0, ...widths));
}

const shorten = (label: string) => (label.length > 18 ? `${label.slice(0, 17)}…` : label);

/** Names at the ends of their lines, moved apart where they would overlap. */
export function ChartLabels({
  series,
  plot,
  room,
}: {
  series: readonly Series[];
  plot: Plot;
  room: number;
}): JSX.Element {
  const ends = series.map(each => {
    for (let at = each.x.length - 1; at >= 0; at--) {
      const y = plot.y(each.y[at]!);
      if (Number.isFinite(y)) return Math.min(plot.height, Math.max(0, y));
    }
    return plot.height / 2;
  });
  const places = spread(ends, 20, 6, plot.height - 4);
  const size = smallText();
  const fits = (label: string) => BADGE + textWidth(shorten(label), size, 600) <= room - GAP + 1;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="line-labels" aria-hidden="true">
      {series.map((each, at) => (
        <g key={each.id} transform={`translate(${plot.width + 10},${places[at]})`}>
          {each.mark && <PairBadge mark={each.mark} svg />}
          {(!each.mark || fits(each.label)) && (
            <text
              x={each.mark ? 22 : 0}
              dominant-baseline="central"
              fill={each.mark ? each.mark.colour : 'var(--ink-soft)'}
            >
              {shorten(each.label)}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
