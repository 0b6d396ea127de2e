/**
 * The straight run down an even slope in closed form: v̇ = a − k v² with a = g(sinα − μ cosα) and
 * k = ρ C_dA/(2m). Derived; it checks the integrator and answers the coach's first question.
 */

import { FieldError } from '../fault/index.ts';
import { GRAVITY } from './balance.ts';

/** SI, slope in rad. */
export interface StraightRun {
  readonly mass: number;
  readonly slope: number;
  readonly friction: number;
  readonly dragArea: number;
  readonly airDensity: number;
}

/** Speed at which drag and friction balance the weight, m/s; 0 when friction alone holds the skier. */
export function terminalSpeed(run: StraightRun): number {
  const push = pushOf(run);
  return push <= 0 ? 0 : Math.sqrt(push / dragOf(run));
}

/**
 * Speed after `time` seconds, m/s.
 *
 * @throws FieldError when friction outweighs the slope: then the run is not a straight run but a stop
 */
export function straightSpeed(run: StraightRun, startSpeed: number, time: number): number {
  const { end, rate } = settled(run);
  if (rate === 0) return startSpeed + pushOf(run) * time;
  const th = Math.tanh(rate * time);
  return (end * (startSpeed + end * th)) / (end + startSpeed * th);
}

/** Distance covered in `time` seconds, m. Throws as `straightSpeed`. */
export function straightDistance(run: StraightRun, startSpeed: number, time: number): number {
  const { end, rate } = settled(run);
  if (rate === 0) return startSpeed * time + 0.5 * pushOf(run) * time * time;
  // ln cosh and e^-x in this form stay finite however long the run.
  const x = rate * time;
  const ratio = startSpeed / end;
  const tail = Math.exp(-2 * x);
  return ((end * end) / pushOf(run)) * (x + Math.log(0.5 * (1 + ratio + (1 - ratio) * tail)));
}

function pushOf(run: StraightRun): number {
  return GRAVITY * (Math.sin(run.slope) - run.friction * Math.cos(run.slope));
}

function dragOf(run: StraightRun): number {
  return (run.airDensity * run.dragArea) / (2 * run.mass);
}

function settled(run: StraightRun): { end: number; rate: number } {
  const push = pushOf(run);
  if (!(push > 0)) {
    throw new FieldError({
      field: 'slope',
      found: { quantity: 'angle', value: run.slope },
      accepted: { above: Math.atan(run.friction), quantity: 'angle' },
    });
  }
  const drag = dragOf(run);
  if (drag === 0) return { end: Infinity, rate: 0 };
  return { end: Math.sqrt(push / drag), rate: Math.sqrt(push * drag) };
}
