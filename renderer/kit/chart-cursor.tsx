import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { t } from '../state/index.ts';
import type { Plot } from './chart.tsx';
import { type Series, valueAt } from './series.ts';

interface Props {
  readonly plot: Plot;
  readonly series: readonly Series[];
  readonly cursor: Signal<number | null>;
  readonly label: string;
  reading(at: number | null): string;
}

/** A line across the chart with a dot on every series; moved by the pointer or, focused, by arrow keys. */
export function ChartCursor({ plot, series, cursor, label, reading }: Props): JSX.Element {
  const [low, high] = plot.x.domain() as [number, number];
  const at = cursor.value;
  const inside = at !== null && at >= low && at <= high;

  const onKeyDown = (event: KeyboardEvent) => {
    const next = steppedBy(event, at, low, high);
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    cursor.value = next;
  };
  const onPointerMove = (event: PointerEvent) => {
    const box = (event.currentTarget as SVGRectElement).getBoundingClientRect();
    const share = (event.clientX - box.left) / box.width;
    cursor.value = low + Math.min(1, Math.max(0, share)) * (high - low);
  };

  return (
    <g data-control>
      {inside && (
        // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
        <g class="cursor" aria-hidden="true">
          <line x1={plot.x(at)} x2={plot.x(at)} y2={plot.height} />
          {series.map(each => {
            const value = valueAt(each, at);
            const y = value === null ? Number.NaN : plot.y(value);
            return y >= -1 && y <= plot.height + 1 ? (
              <circle
                key={each.id}
                cx={plot.x(at)}
                cy={y}
                r={4}
                fill={each.mark?.colour ?? 'var(--ink-soft)'}
              />
            ) : null;
          })}
        </g>
      )}
      <rect
        class="cursor-field"
        width={plot.width}
        height={plot.height}
        tabindex={0}
        role="slider"
        aria-label={label}
        aria-valuemin={low}
        aria-valuemax={high}
        aria-valuenow={at ?? low}
        aria-valuetext={reading(at) || t('kit.noReading')}
        onPointerMove={onPointerMove}
        onPointerLeave={() => {
          cursor.value = null;
        }}
        onKeyDown={onKeyDown}
        onBlur={() => {
          cursor.value = null;
        }}
      />
    </g>
  );
}

/** Where a key moves the cursor; undefined for keys that are not the cursor's. Shift moves finely. */
function steppedBy(
  event: KeyboardEvent,
  at: number | null,
  low: number,
  high: number,
): number | null | undefined {
  const step = (high - low) / (event.shiftKey ? 500 : 50);
  const from = at ?? (low + high) / 2;
  switch (event.key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return Math.min(high, from + step);
    case 'ArrowLeft':
    case 'ArrowDown':
      return Math.max(low, from - step);
    case 'Home':
      return low;
    case 'End':
      return high;
    case 'Escape':
      return at === null ? undefined : null;
    default:
      return undefined;
  }
}
