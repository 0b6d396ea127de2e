import './traces.css';
import type { ComponentChildren, JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { formatQuantity } from '../../../core/units/index.ts';
import { duration, runs } from '../../answers/index.ts';
import { Figure, type Size } from '../../kit/index.ts';
import { fileStem, inWords, t, view } from '../../state/index.ts';
import { clock, seek } from './clock.ts';
import { LimitPatterns } from './limit-bands.tsx';
import type { LimitStretch } from './limit-words.ts';
import type { MeasuredBand } from './measured.ts';
import { phaseWords, rowAt } from './skids.ts';
import type { Trace } from './trace-list.ts';
import { type DrawnTrace, drawnTrace, type PlotBox, TracePlot } from './trace-plot.tsx';

/** Room round the plots in rem, so that it grows with the type. */
const LEFT = 2.15;
const HEAD = 1.55;
const FOOT = 1;
const GAP = 0.9;
/** Widths in rem of small type: a letter of a heading, a value beside it, and the room between. */
const LETTER = 0.42;
const VALUE = 2.1;
const BETWEEN = 1.4;
const SMALL_TYPE = 0.8125;

const NO_BANDS: readonly MeasuredBand[] = [];
const NO_LIMITS: readonly LimitStretch[] = [];

export interface TraceFigureProps {
  readonly title: string;
  readonly description: string;
  readonly traces: readonly Trace[];
  readonly note?: ComponentChildren;
  readonly tools?: ComponentChildren;
  readonly measured?: readonly MeasuredBand[];
  readonly limits?: readonly LimitStretch[];
  rows(): readonly (readonly (string | number)[])[];
}

/** Small plots over one time; dragging over them moves the time everything shows. */
export function TraceFigure(props: TraceFigureProps): JSX.Element {
  const { traces, measured = NO_BANDS, limits = NO_LIMITS } = props;
  const shown = runs.value.runs;
  const key = measured.map(band => inWords(band.label) + band.trace).join();
  const drawn = useMemo(() => traces.map(trace => drawnTrace(trace, shown, measured)), [traces, shown, key]);
  return (
    <Figure
      title={props.title}
      class="traces"
      description={props.description}
      note={props.note}
      rows={props.rows}
      tools={props.tools}
      moving={size => <TimeReading size={size} drawn={drawn} />}
    >
      {size => <TraceGrid size={size} drawn={drawn} limits={limits} scope={fileStem(props.title)} />}
    </Figure>
  );
}

interface GridProps {
  readonly size: Size;
  readonly drawn: readonly DrawnTrace[];
}

/** Where the plots stand in a drawing of this size; null where there is nothing to plot. */
function placed({
  size,
  drawn,
}: GridProps): { boxes: readonly PlotBox[]; columns: number; end: number } | null {
  const end = duration.value;
  if (!drawn[0]?.lines.length || end === 0) return null;
  const style = getComputedStyle(document.documentElement);
  const rem = Number.parseFloat(style.fontSize);
  const type = (Number.parseFloat(style.getPropertyValue('--text-small')) || SMALL_TYPE) / SMALL_TYPE;
  const longest = drawn.reduce((most, { trace }) => Math.max(most, t(trace.label).length), 0);
  const wide = (LETTER * longest + VALUE * drawn[0].lines.length + BETWEEN) * type * rem;
  const room = Math.max(2, Math.floor(size.width / wide));
  // As many rows as are needed, and those as even as can be.
  const columns = Math.ceil(drawn.length / Math.ceil(drawn.length / Math.min(room, drawn.length)));
  const rows = Math.ceil(drawn.length / columns);
  const left = LEFT * rem;
  const head = HEAD * rem;
  const width = size.width / columns - left - GAP * rem;
  const height = Math.max(20, (size.height - FOOT * rem) / rows - head);
  const boxes = drawn.map((_, i) => ({
    left: (i % columns) * (size.width / columns) + left,
    top: Math.floor(i / columns) * (height + head) + head,
    width,
    height,
  }));
  return { boxes, columns, end };
}

function TraceGrid({
  limits,
  scope,
  ...grid
}: GridProps & { readonly limits: readonly LimitStretch[]; readonly scope: string }): JSX.Element | null {
  const place = placed(grid);
  if (!place) return null;
  const { boxes, columns, end } = place;
  return (
    <g>
      <defs>
        <pattern id={`${scope}-skid`} width="6" height="6" patternUnits="userSpaceOnUse">
          <path d="M-1,7L7,-1M-1,1L1,-1M5,7L7,5" stroke="var(--danger)" stroke-width="1.2" opacity="0.6" />
        </pattern>
      </defs>
      <LimitPatterns scope={scope} />
      {grid.drawn.map((each, i) => (
        <TracePlot
          key={each.trace.id}
          drawn={each}
          box={boxes[i]!}
          end={end}
          limits={limits}
          scope={scope}
          system={view.value.system}
          times={i >= grid.drawn.length - columns}
        />
      ))}
    </g>
  );
}
/** What moves: a line in every plot and the values under it. */
function TimeReading(grid: GridProps): JSX.Element | null {
  const place = placed(grid);
  if (!place) return null;
  const { drawn } = grid;
  const { boxes, end } = place;
  const time = Math.min(clock.value, end);
  const lead = drawn[0]!.lines[0]!.run.track;
  const spoken = `${time.toFixed(2)} s, ${phaseWords(lead, rowAt(lead, time))}`;
  const scrub = (event: PointerEvent, box: PlotBox) => {
    const area = (event.currentTarget as Element).getBoundingClientRect();
    seek((end * (event.clientX - area.left)) / box.width);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    const to = by ? time + (by * end) / (event.shiftKey ? 500 : 100) : { Home: 0, End: end }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    seek(to);
  };
  return (
    <>
      {drawn.map(({ trace, lines, low, high }, i) => {
        const box = boxes[i]!;
        const at = (box.width * time) / end;
        return (
          <g key={trace.id} transform={`translate(${box.left},${box.top})`} data-control>
            <path class="time-line" d={`M${at},0V${box.height}`} />
            <text class="trace-value" x={box.width + 6} y={-6} text-anchor="end">
              {lines.map((line, k) => (
                <tspan key={line.run.pair.id} fill={line.run.pair.mark.colour} dx={k > 0 ? 6 : 0}>
                  {lines.length > 1 ? `${line.run.pair.mark.letter} ` : ''}
                  {valueText(trace, line.values[rowAt(line.run.track, time)]!, lines.length > 1)}
                </tspan>
              ))}
            </text>
            {lines.map(line => {
              const value = line.values[rowAt(line.run.track, time)]!;
              return Number.isFinite(value) ? (
                <circle
                  key={line.run.pair.id}
                  class="time-dot"
                  cx={at}
                  cy={box.height * (1 - (value - low) / (high - low))}
                  r={3.5}
                  fill={line.run.pair.mark.colour}
                />
              ) : null;
            })}
            <rect
              class="cursor-field"
              width={box.width}
              height={box.height}
              tabindex={i === 0 ? 0 : -1}
              role="slider"
              aria-label={t('slope.traceOverTime', { what: t(trace.label) })}
              aria-valuemin={0}
              aria-valuemax={end}
              aria-valuenow={time}
              aria-valuetext={spoken}
              onPointerDown={event => {
                event.currentTarget.setPointerCapture(event.pointerId);
                scrub(event, box);
              }}
              onPointerMove={event => {
                if (event.buttons === 1) scrub(event, box);
              }}
              onKeyDown={onKeyDown}
            />
          </g>
        );
      })}
    </>
  );
}

/** Two values side by side have room for fewer digits than one. */
function valueText(trace: Trace, value: number, short: boolean): string {
  const { system } = view.value;
  const whole = trace.measure === 'angle' || trace.measure === 'speed';
  const fine = trace.measure === 'bodyLength';
  const decimals = short && !fine ? (whole ? 0 : 1) : undefined;
  return formatQuantity(value, trace.measure, { system, decimals }).value;
}
