import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { formatQuantity, type MeasureName } from '../../core/units/index.ts';
import { settle, view } from '../state/index.ts';

export interface HandleProps {
  readonly label: string;
  readonly measure: MeasureName;
  /** Value and limits in the unit the measure holds. */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** One key press; Shift moves a tenth of it. */
  readonly step: number;
  /** Direction the handle moves in. */
  readonly along: 'x' | 'y';
  /** Where it sits, px in the drawing. */
  readonly x: number;
  readonly y: number;
  /** Value for a position along its direction, px in the drawing. */
  invert(px: number): number;
  /** Printed beside the handle; left out, nothing is printed. */
  readonly text?: string;
  readonly textSide?: 'left' | 'right' | 'above' | 'below';
  readonly disabled?: boolean;
  /** Called on every move; pass the edit a key so that one drag is one undo step. */
  onInput(value: number): void;
}

const OFFSETS = {
  left: { x: -16, y: 0, anchor: 'end' },
  right: { x: 16, y: 0, anchor: 'start' },
  above: { x: 0, y: -19, anchor: 'middle' },
  below: { x: 0, y: 20, anchor: 'middle' },
} as const;

/** A grip inside a drawing: dragged by the pointer, moved by arrow keys, read as a slider. */
export function Handle(props: HandleProps): JSX.Element {
  const { value, min, max, step, along } = props;
  /** Keeps the grip under the pointer where it was taken hold of. */
  const grip = useRef<number | null>(null);
  const within = (held: number) => Math.min(max, Math.max(min, held));
  const tidy = (held: number) => Number((Math.round(held / step) * step).toFixed(9));
  const reading = formatQuantity(value, props.measure, { system: view.value.system }).text;

  const position = (event: PointerEvent) => {
    const group = (event.currentTarget as SVGGElement).parentNode as SVGGraphicsElement;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(group.getScreenCTM()!.inverse());
    return point[along];
  };
  const take = (event: PointerEvent) => {
    if (props.disabled || event.button !== 0) return;
    (event.currentTarget as SVGGElement).setPointerCapture(event.pointerId);
    (event.currentTarget as SVGGElement).focus({ preventScroll: true });
    grip.current = position(event) - props[along];
    event.stopPropagation();
  };
  const move = (event: PointerEvent) => {
    if (grip.current === null) return;
    const wanted = within(tidy(props.invert(position(event) - grip.current)));
    if (wanted !== value) props.onInput(wanted);
  };
  const release = () => {
    if (grip.current === null) return;
    grip.current = null;
    settle();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    const next = direction
      ? Number((value + direction * (event.shiftKey ? step / 10 : step)).toFixed(9))
      : event.key === 'Home'
        ? min
        : event.key === 'End'
          ? max
          : null;
    if (next === null) return;
    event.preventDefault();
    event.stopPropagation();
    if (!props.disabled) props.onInput(within(next));
  };

  const offset = OFFSETS[props.textSide ?? 'above'];
  return (
    <g
      class={`handle along-${along}`}
      transform={`translate(${props.x},${props.y})`}
      role="slider"
      tabindex={0}
      aria-label={props.label}
      aria-orientation={along === 'x' ? 'horizontal' : 'vertical'}
      aria-valuemin={min}
      aria-valuemax={max}
      aria-valuenow={value}
      aria-valuetext={reading}
      aria-disabled={props.disabled}
      onPointerDown={take}
      onPointerMove={move}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={onKeyDown}
      onBlur={settle}
      data-control
    >
      <circle class="handle-reach" r={18} />
      <circle class="handle-grip" r={7} />
      {along === 'y' ? (
        <path class="handle-way" d="M0,-15l-3.5,4.5h7zM0,15l-3.5,-4.5h7z" />
      ) : (
        <path class="handle-way" d="M-15,0l4.5,-3.5v7zM15,0l-4.5,-3.5v7z" />
      )}
      {props.text && (
        <text x={offset.x} y={offset.y} text-anchor={offset.anchor} dominant-baseline="central">
          {props.text}
        </text>
      )}
    </g>
  );
}
