import { type Bendable, MOST_LOAD_N, overhang, type Pressed, type Rest } from '../../answers/index.ts';
import type { Size } from '../../kit/index.ts';

/** Maps the side view to px: boot centres lie on one upright line, heights are drawn `times` as large. */
export interface SideScale {
  readonly times: number;
  readonly perMetre: number;
  /** Level of the supports or of the table. */
  readonly ground: number;
  readonly bottom: number;
  x(pair: Bendable, along: number): number;
  y(height: number): number;
}

export const RAIL = 20;
const SIDE = 30;
/** px under the lowest ski for its figures. */
const FOOT = 38;
/** Between the rail of the press and the ski: the arrow. */
const ARROW = { bench: 66, table: 88 };

export interface Shown {
  readonly pair: Bendable;
  readonly shape: Pressed;
}

const TIMES: Record<Rest, readonly number[]> = { bench: [5, 3, 2, 1], table: [20, 10, 5, 2, 1] };

/** The scale that shows all of it, with heights as enlarged as the room allows, or true. */
export function sideScale(shown: readonly Shown[], size: Size, rest: Rest, enlarged: boolean): SideScale {
  const behind = Math.max(...shown.map(({ pair }) => pair.ski.bootCentre + overhang(pair).rear));
  const ahead = Math.max(
    ...shown.map(({ pair }) => pair.ski.contactLength + overhang(pair).front - pair.ski.bootCentre),
  );
  const perMetre = (size.width - 2 * SIDE) / (behind + ahead);
  const centre = size.width / 2 + ((behind - ahead) / 2) * perMetre;
  const highest = Math.max(0, ...shown.map(({ shape }) => Math.max(...shape.free)));
  const lowest = Math.min(0, ...shown.map(({ shape }) => Math.min(...shape.pressed)));
  const bottom = size.height - FOOT;
  const room = bottom - RAIL - ARROW[rest] - 8 - (rest === 'bench' ? 20 * (shown.length - 1) : 0);
  const fits = (times: number) => (highest - lowest) * perMetre * times <= room;
  const times = enlarged ? (TIMES[rest].find(fits) ?? 1) : 1;
  const up = highest * perMetre * times;
  const ground = rest === 'bench' ? RAIL + ARROW.bench + up : bottom - 6;
  return {
    times,
    perMetre,
    ground,
    bottom,
    x: (pair, along) => centre + (along - pair.ski.bootCentre) * perMetre,
    y: height => ground - height * perMetre * times,
  };
}

/** Greatest load that stays in the drawing on the bench, N. */
export function mostDrawn(scale: SideScale, shape: Pressed): number {
  const depth = (scale.bottom - 6 - scale.y(shape.freeAt)) / (scale.perMetre * scale.times);
  return Math.min(MOST_LOAD_N, Math.floor((depth * shape.spring) / 5) * 5);
}
