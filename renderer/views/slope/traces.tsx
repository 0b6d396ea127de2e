import './traces.css';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { formatQuantity } from '../../../core/units/index.ts';
import { Figure, type Size } from '../../kit/index.ts';
import { view } from '../../state/index.ts';
import { clock, seek } from './clock.ts';
import { MEASURED_WORDS } from './measured.ts';
import { turnRadiusOf } from './moment.ts';
import { duration, runs } from './runs.ts';
import { measuredShown } from './settings.ts';
import { phaseWords, rowAt } from './skids.ts';
import { TRACES, type Trace } from './trace-list.ts';
import { type DrawnTrace, drawnTrace, type PlotBox, TracePlot } from './trace-plot.tsx';
import { trackRows } from './track-csv.ts';

/** Room round the plots in rem, so that it grows with the type. */
const LEFT = 2.15;
const HEAD = 1.55;
const FOOT = 1;
const GAP = 0.9;

/** Six traces over one time; dragging over them moves the time everything shows. */
export function Traces(): JSX.Element {
  const shown = runs.value.runs;
  const measured = measuredShown.value;
  const drawn = useMemo(() => TRACES.map(trace => drawnTrace(trace, shown, measured)), [shown, measured]);
  return (
    <>
      <Figure
        title="Traces"
        class="traces"
        description="Speed, radius, edge angle, lean, load and hold over time"
        note={measured ? undefined : 'Right turns +. Hatched: slides.'}
        rows={() =>
          trackRows(
            shown.map(({ pair, plan, track }) => ({ name: pair.name, track, turn: turnRadiusOf(plan.turn) })),
          )
        }
        tools={
          <label class="check">
            <input
              type="checkbox"
              checked={measured}
              onChange={() => {
                measuredShown.value = !measured;
              }}
            />
            Measured turns
          </label>
        }
        moving={size => <TimeReading size={size} drawn={drawn} />}
      >
        {size => <TraceGrid size={size} drawn={drawn} measured={measured} />}
      </Figure>
      {measured && <p class="reading-hint">{MEASURED_WORDS}</p>}
    </>
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
  const columns = size.width > 2 * size.height ? 3 : 2;
  const rows = Math.ceil(drawn.length / columns);
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
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

function TraceGrid({ measured, ...grid }: GridProps & { readonly measured: boolean }): JSX.Element | null {
  const place = placed(grid);
  if (!place) return null;
  const { boxes, columns, end } = place;
  return (
    <g>
      <defs>
        <pattern id="skid-hatch" width="6" height="6" patternUnits="userSpaceOnUse">
          <path d="M-1,7L7,-1M-1,1L1,-1M5,7L7,5" stroke="var(--danger)" stroke-width="1.2" opacity="0.6" />
        </pattern>
      </defs>
      {grid.drawn.map((each, i) => (
        <TracePlot
          key={each.trace.id}
          drawn={each}
          box={boxes[i]!}
          end={end}
          measured={measured}
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
              aria-label={`${trace.label} over time`}
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
  const decimals = short ? (whole ? 0 : 1) : undefined;
  return formatQuantity(value, trace.measure, { system, decimals }).value;
}
