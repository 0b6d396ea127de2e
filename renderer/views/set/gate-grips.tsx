import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Gate } from '../../../core/course/index.ts';
import { changeCourse, course, moveGate, removeGate, settle, t, view } from '../../state/index.ts';
import { placeText, shortName } from './gate-words.ts';
import { type PlanScale, roomDown } from './plan-scale.ts';
import { selectedGate, selectGate } from './set-state.ts';

/** Gates move by tenths of a metre, with Shift by hundredths. */
const STEP = 0.1;
/** Further across than this is a slip of the hand, m. */
const MOST_ACROSS = 100;
/** px a gate's name takes with some air. */
const NAME_ROOM = 30;

const within = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value));

function move(at: number, x: number, y: number): void {
  const { gates } = course.value;
  const [least, most] = roomDown(gates, at);
  const next = { x: within(x, -MOST_ACROSS, MOST_ACROSS), y: within(y, least, most) };
  if (next.x === gates[at].x && next.y === gates[at].y) return;
  changeCourse(t('set.gateStep', { gate: gates[at].label }), moveGate(at, next), `gate ${at}`);
}

/** The turning poles, to be dragged or moved by keys. One of them takes the focus; the others follow it. */
export function GateGrips({ scale }: { scale: PlanScale }): JSX.Element {
  const { gates } = course.value;
  const group = useRef<SVGGElement>(null);
  const follow = useRef(false);
  const selected = selectedGate.value;
  const focusOn = (at: number) => {
    const next = within(at, 0, course.value.gates.length - 1);
    follow.current = next !== selected;
    selectGate(next);
  };
  // Once the gate gone to is drawn, which may take another stretch of the set.
  useLayoutEffect(() => {
    if (!follow.current) return;
    follow.current = false;
    group.current?.querySelector<SVGGElement>('[tabindex="0"]')?.focus();
  }, [selected]);
  // Names a finger apart; where gates stand closer, every second, fifth, tenth … is named.
  const named = [1, 2, 5, 10, 20, 50, 100, 200, 500].find(each => each * scale.perGate >= NAME_ROOM) ?? 1000;
  return (
    <g ref={group}>
      {gates.slice(scale.from, scale.to + 1).map((gate, i) => (
        <GateGrip
          key={scale.from + i}
          gate={gate}
          at={scale.from + i}
          scale={scale}
          named={(scale.from + i + 1) % named === 0}
          focusOn={focusOn}
        />
      ))}
    </g>
  );
}

function GateGrip(props: {
  gate: Gate;
  at: number;
  scale: PlanScale;
  named: boolean;
  focusOn(at: number): void;
}): JSX.Element {
  const { gate, at, scale, named, focusOn } = props;
  const held = useRef<{ dx: number; dy: number; scale: PlanScale } | null>(null);
  const selected = at === selectedGate.value;
  const x = scale.down(gate.y);
  const y = scale.across(gate.x);

  const position = (event: PointerEvent) => {
    const own = (event.currentTarget as SVGGElement).parentNode as SVGGraphicsElement;
    return new DOMPoint(event.clientX, event.clientY).matrixTransform(own.getScreenCTM()!.inverse());
  };
  const take = (event: PointerEvent) => {
    if (event.button !== 0) return;
    const point = position(event);
    (event.currentTarget as SVGGElement).setPointerCapture(event.pointerId);
    (event.currentTarget as SVGGElement).focus({ preventScroll: true });
    // The scale under the hand stays as it was, or the drawing would run away from it.
    held.current = { dx: point.x - x, dy: point.y - y, scale };
    selectGate(at);
  };
  const drag = (event: PointerEvent) => {
    if (!held.current) return;
    const point = position(event);
    const { dx, dy, scale: then } = held.current;
    const tidy = (metres: number) => Number((Math.round(metres / STEP) * STEP).toFixed(3));
    move(at, tidy(then.invertAcross(point.y - dy)), tidy(then.invertDown(point.x - dx)));
  };
  const release = () => {
    if (!held.current) return;
    held.current = null;
    settle();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.shiftKey ? STEP / 10 : STEP;
    const by = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[event.key];
    const count = course.value.gates.length;
    if (by) {
      const tidy = (metres: number) => Number(metres.toFixed(3));
      move(at, tidy(gate.x + by[0] * step), tidy(gate.y + by[1] * step));
    } else if (event.key === 'PageDown') focusOn(at + 1);
    else if (event.key === 'PageUp') focusOn(at - 1);
    else if (event.key === 'Home') focusOn(0);
    else if (event.key === 'End') focusOn(count - 1);
    else if (event.key === 'Delete' && count > 2) {
      changeCourse(t('set.removeGateStep', { gate: gate.label }), removeGate(at));
      focusOn(Math.min(at, count - 2));
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  // Poles of a long set shrink rather than hide one another.
  const size = within(scale.perGate / 2, 1.5, 4.5);
  const red = gate.colour?.toLowerCase() !== 'blue';
  return (
    // biome-ignore lint/a11y/useSemanticElements: an HTML button cannot stand in a drawing
    <g
      class={`gate${selected ? ' selected' : ''}`}
      transform={`translate(${x},${y})`}
      role="button"
      tabindex={selected ? 0 : -1}
      aria-roledescription={t('set.movableGate')}
      aria-pressed={selected}
      aria-label={t('set.gateKeys', { gate: gate.label, place: placeText(gate, view.value.system) })}
      onPointerDown={take}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={onKeyDown}
      onFocus={() => selectGate(at)}
      onBlur={settle}
    >
      <circle class="gate-reach" r={13} />
      {red ? (
        <circle class="gate-pole red" r={size} />
      ) : (
        <rect
          class="gate-pole blue"
          x={-0.93 * size}
          y={-0.93 * size}
          width={1.86 * size}
          height={1.86 * size}
        />
      )}
      {(named || selected) && (
        <text class="halo" y={gate.x < 0 ? 17 : -16} text-anchor="middle" dominant-baseline="central">
          {shortName(gate.label)}
        </text>
      )}
    </g>
  );
}
