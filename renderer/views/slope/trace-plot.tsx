import type { JSX } from 'preact';
import { formatQuantity, type System, shownAs } from '../../../core/units/index.ts';
import type { PairRun } from '../../answers/index.ts';
import { extentOf, type Series } from '../../kit/index.ts';
import { inWords, t } from '../../state/index.ts';
import { limitFill } from './limit-bands.tsx';
import type { LimitStretch } from './limit-words.ts';
import type { MeasuredBand } from './measured.ts';
import { stretchesOf } from './skids.ts';
import type { Trace } from './trace-list.ts';

/** Where one small plot stands in the drawing, px. */
export interface PlotBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const MOST_POINTS = 360;
/** Height of a tick's number. */
const TICK_PX = 13;
/** Height of the band along the foot that says what holds the skier back. */
const LIMIT_PX = 7;

export interface TraceLine {
  readonly run: PairRun;
  readonly values: Float64Array;
}

export interface DrawnTrace {
  readonly trace: Trace;
  readonly lines: readonly TraceLine[];
  readonly bands: readonly MeasuredBand[];
  readonly low: number;
  readonly high: number;
}

/** Columns and axis of a trace over all runs; the measured bands take part. */
export function drawnTrace(
  trace: Trace,
  runs: readonly PairRun[],
  measured: readonly MeasuredBand[] = [],
): DrawnTrace {
  const lines = runs.map(run => ({ run, values: trace.values(run.track, run) }));
  const bands = measured.filter(band => band.trace === trace.id);
  const lists: ArrayLike<number>[] = lines.map(line => line.values);
  if (trace.atLeast) lists.push(trace.atLeast);
  for (const band of bands) lists.push([band.low, band.high]);
  const [least, greatest] = extentOf(lists, {
    label: t(trace.label),
    measure: trace.measure,
    zero: trace.zero,
  });
  const short = Math.max(0, (trace.leastSpan ?? 0) - (greatest - least)) / 2;
  const low = least - short;
  const high = greatest + short;
  const room = 0.06 * (high - low);
  return { trace, lines, bands, low: low === 0 ? 0 : low - room, high: high + room };
}

interface Props {
  readonly drawn: DrawnTrace;
  readonly box: PlotBox;
  readonly end: number;
  /** What holds the lead back, and the name its patterns are known by. */
  readonly limits: readonly LimitStretch[];
  readonly scope: string;
  readonly system: System;
  /** Times along the bottom. */
  readonly times: boolean;
}

/** The still part of a small plot: frame, bands, skids and lines. It is drawn once a run. */
export function TracePlot({ drawn, box, end, limits, scope, system, times }: Props): JSX.Element {
  const { trace, lines, bands, low, high } = drawn;
  const lead = lines[0]?.run.track;
  const y = (value: number) => box.height * (1 - (value - low) / (high - low));
  const x = (t: number) => (box.width * t) / end;
  const straddles = low < 0 && high > 0;
  const far = -low > high ? low : high;
  // Two numbers closer than their own height would be none.
  const apart = (Math.abs(far) / (high - low)) * box.height >= TICK_PX;
  const ticks = straddles ? (apart ? [0, far] : [0]) : box.height >= 2 * TICK_PX ? [low, high] : [high];
  const text = (value: number) => {
    const { factor, decimals } = shownAs(trace.measure, system);
    return formatQuantity(value, trace.measure, {
      system,
      decimals:
        value === 0 || Math.abs(value * factor) >= 10
          ? 0
          : Math.min((high - low) * factor < 1 ? 2 : 1, decimals),
    }).value;
  };
  return (
    <g transform={`translate(${box.left},${box.top})`}>
      <text class="trace-label" x={-28} y={-6}>
        {t(trace.label)} <tspan fill="var(--ink-soft)">{unitOf(trace, system)}</tspan>
      </text>
      <svg width={box.width} height={box.height} overflow="hidden" role="presentation">
        <rect class="trace-field" width={box.width} height={box.height} />
        {bands.map((band, i) => (
          <g key={inWords(band.label)}>
            <rect
              class="measured-band"
              y={y(band.high)}
              width={box.width}
              height={Math.max(2, y(band.low) - y(band.high))}
            />
            <text
              class="measured-label halo"
              x={4 + 62 * i}
              y={Math.max(7, y((band.low + band.high) / 2))}
              dominant-baseline="central"
            >
              {inWords(band.label)}
            </text>
          </g>
        ))}
        <path class="zero" d={`M0,${y(0)}H${box.width}`} />
        {lines
          .slice(0, 1)
          .map(line =>
            stretchesOf(line.run.track).map(({ from, to }) => (
              <rect
                key={from}
                class="skid-band"
                x={x(from)}
                width={Math.max(1.5, x(to) - x(from))}
                height={box.height}
                fill={`url(#${scope}-skid)`}
              />
            )),
          )}
        {lead &&
          limits.map(({ by, from, to }) => (
            <rect
              key={from}
              class="limit-band"
              x={x(lead.t[from]!)}
              y={box.height - LIMIT_PX}
              width={Math.max(1, x(lead.t[to]!) - x(lead.t[from]!))}
              height={LIMIT_PX}
              fill={limitFill(scope, by)}
            />
          ))}
        {lines.map(line => (
          <path
            key={line.run.pair.id}
            class="line trace-line"
            d={pathOf({ x: line.run.track.t, y: line.values }, x, y)}
            stroke={line.run.pair.mark.colour}
            stroke-dasharray={line.run.pair.mark.dash}
          />
        ))}
      </svg>
      {ticks.map(value => (
        <text
          key={value}
          class="trace-tick"
          x={-5}
          y={Math.max(5, Math.min(box.height - 4, y(value)))}
          text-anchor="end"
          dominant-baseline="central"
        >
          {text(value)}
        </text>
      ))}
      {times && (
        <g class="trace-times">
          <text x={0} y={box.height + 13}>
            0 s
          </text>
          <text x={box.width} y={box.height + 13} text-anchor="end">
            {end.toFixed(1)} s
          </text>
        </g>
      )}
    </g>
  );
}

function unitOf(trace: Trace, system: System): string {
  const { unit } = shownAs(trace.measure, system);
  return trace.measure === 'bodyWeights' ? '×' : unit;
}

function pathOf(line: Pick<Series, 'x' | 'y'>, x: (t: number) => number, y: (v: number) => number): string {
  const n = line.x.length;
  const step = Math.max(1, Math.floor(n / MOST_POINTS));
  let path = '';
  let pen = false;
  for (let i = 0; i < n; i += step) {
    const value = line.y[i]!;
    if (!Number.isFinite(value)) {
      pen = false;
      continue;
    }
    path += `${pen ? 'L' : 'M'}${x(line.x[i]!).toFixed(1)},${y(value).toFixed(1)}`;
    pen = true;
  }
  return path;
}
