import { type Signal, useSignal } from '@preact/signals';
import { area, line, type ScaleLinear, scaleLinear } from 'd3';
import type { ComponentChildren, JSX } from 'preact';
import { type FormatOptions, formatQuantity, type System, shownAs } from '../../core/units/index.ts';
import { t, view } from '../state/index.ts';
import { ChartAxes, tickRoom, ticksUp } from './chart-axes.tsx';
import { ChartCursor } from './chart-cursor.tsx';
import { ChartLabels, labelRoom } from './chart-labels.tsx';
import { Figure, type FigureProps } from './figure.tsx';
import { type Axis, extentOf, type Series, seriesRows, valueAt } from './series.ts';

/** Where a chart's content is drawn. Scales take held units and give px inside the plot. */
export interface Plot {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly width: number;
  readonly height: number;
  readonly system: System;
}

export interface ChartProps
  extends Pick<FigureProps, 'title' | 'description' | 'height' | 'tools' | 'class'> {
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  /** Cursor position in held x units; share one signal to move several charts together. */
  readonly cursor?: Signal<number | null>;
  /** Said when there is nothing to draw: what to do next. */
  readonly empty?: ComponentChildren;
  /** Drawn over the lines: handles, limits, notes. */
  readonly children?: (plot: Plot) => ComponentChildren;
  /** Drawn under the lines. */
  readonly under?: (plot: Plot) => ComponentChildren;
}

const TOP = 30;
const BOTTOM = 42;

/**
 * A line chart with units on its axes, direct labels, and a cursor that pointer and arrow keys move; its
 * reading stands beside the title and is spoken.
 */
export function Chart(props: ChartProps): JSX.Element {
  const own = useSignal<number | null>(null);
  const cursor = props.cursor ?? own;
  const { system } = view.value;
  const drawn = props.series.filter(each => each.x.length > 0);
  const read = (measure: Axis['measure'], value: number, options: FormatOptions = {}) =>
    formatQuantity(value, measure, { system, ...options }).text;

  const reading = (at: number | null): string => {
    if (at === null) return '';
    const values = drawn.flatMap(each => {
      const value = valueAt(each, at);
      return value === null ? [] : [`${each.mark?.letter ?? each.label} ${read(props.y.measure, value)}`];
    });
    return t('kit.readingAt', {
      at: read(props.x.measure, at),
      values: values.length > 0 ? values : t('kit.nothingHere'),
    });
  };

  if (drawn.length === 0) {
    return (
      <Figure title={props.title} height={props.height} tools={props.tools} class={props.class}>
        {({ width, height }) => (
          <foreignObject width={width} height={height}>
            <div class="figure-empty">{props.empty ?? t('kit.choosePair')}</div>
          </foreignObject>
        )}
      </Figure>
    );
  }

  const xExtent = extentOf(
    drawn.map(each => each.x),
    props.x,
  );
  const yLists = drawn.flatMap(each => [each.y, ...(each.low && each.high ? [each.low, each.high] : [])]);
  const yExtent = extentOf(yLists, props.y);
  const toX = shownAs(props.x.measure, system);
  const toY = shownAs(props.y.measure, system);

  return (
    <Figure
      title={props.title}
      description={props.description}
      height={props.height}
      tools={props.tools}
      class={props.class}
      rows={() => seriesRows(props.x, props.y, drawn, system)}
      reading={<output aria-live="polite">{reading(cursor.value)}</output>}
    >
      {size => {
        const right = labelRoom(drawn, size.width);
        const height = Math.max(40, size.height - TOP - BOTTOM);
        const y = scaleLinear().domain(yExtent).range([height, 0]);
        // Round ends are round in the unit shown, not in the unit held.
        if (!props.y.domain) {
          const nice = scaleLinear()
            .domain(yExtent.map(end => end * toY.factor))
            .nice(5)
            .domain();
          y.domain(nice.map(end => end / toY.factor));
        }
        const left = tickRoom(ticksUp(y.domain(), toY, height));
        const width = Math.max(40, size.width - left - right);
        const x = scaleLinear().domain(xExtent).range([0, width]);
        const plot: Plot = { x, y, width, height, system };
        return (
          <g transform={`translate(${left},${TOP})`}>
            <ChartAxes
              plot={plot}
              left={left}
              right={right}
              xAxis={props.x}
              yAxis={props.y}
              xShown={toX}
              yShown={toY}
            />
            <svg x={0} y={0} width={width} height={height} overflow="hidden" role="presentation">
              {props.under?.(plot)}
              {drawn.map(each => (
                <Line key={each.id} series={each} plot={plot} />
              ))}
            </svg>
            <ChartLabels series={drawn} plot={plot} room={right} />
            <ChartCursor
              plot={plot}
              series={drawn}
              cursor={cursor}
              label={t('kit.cursor', { chart: props.title, axis: props.x.label })}
              reading={reading}
            />
            {props.children?.(plot)}
          </g>
        );
      }}
    </Figure>
  );
}

function Line({ series, plot }: { series: Series; plot: Plot }): JSX.Element {
  const at = Array.from({ length: series.x.length }, (_, index) => index);
  const px = (index: number) => plot.x(series.x[index]!);
  const path = line<number>(px, index => plot.y(series.y[index]!)).defined(index =>
    Number.isFinite(series.y[index]!),
  )(at);
  const { low, high } = series;
  const band =
    low && high
      ? area<number>(
          px,
          index => plot.y(low[index]!),
          index => plot.y(high[index]!),
        ).defined(index => Number.isFinite(low[index]!) && Number.isFinite(high[index]!))(at)
      : series.filled
        ? area<number>(px, plot.y(0), index => plot.y(series.y[index]!)).defined(index =>
            Number.isFinite(series.y[index]!),
          )(at)
        : null;
  const colour = series.mark?.colour ?? 'var(--ink-soft)';
  return (
    <g>
      {band && <path d={band} fill={colour} fill-opacity={0.14} stroke="none" />}
      <path
        class={series.context ? 'line context' : 'line'}
        d={path ?? ''}
        stroke={colour}
        stroke-dasharray={series.context ? '2 4' : series.mark?.dash}
      />
    </g>
  );
}
