/**
 * Banked turns of a point on the skis: at every instant the skis are tilted as far as the force leans, from
 * traverse to traverse. The limit of a leg of no length, and where a skier on a leg begins to be looked for.
 */

import { GRAVITY } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';
import type { BankedProgramme } from './edge-programme.ts';
import { STOPPED } from './first-guess.ts';
import { idealLean } from './ideal-carving.ts';
import type { FullConditions } from './run-conditions.ts';
import type { SmoothGround } from './smooth-ground.ts';

export interface PointTurns {
  /** s between rows. */
  readonly step: number;
  readonly heading: Float64Array;
  readonly speed: Float64Array;
  readonly down: Float64Array;
  /** Signed, rad. */
  readonly lean: Float64Array;
  readonly curvature: Float64Array;
  readonly normal: Float64Array;
  readonly sideways: Float64Array;
  /** Row, with its part, at which each turn begins, and where the last one ends. */
  readonly turns: readonly number[];
  readonly end: 'programme over' | 'stopped' | 'no balanced lean' | 'time over';
}

const STEEPEST = 89.9 * DEGREE;
const STEP = 0.01;
const LONGEST = 600;

/**
 * Follows the turns by Heun's rule.
 *
 * @param most lean taken where none balances, rad; left out, the turns end there
 */
export function pointTurns(
  run: FullConditions,
  programme: BankedProgramme,
  ground: SmoothGround,
  heading: number,
  most?: number,
): PointTurns {
  const step = STEP;
  const steepest = most ?? STEEPEST;
  const six = new Float64Array(6);
  const air = (run.airDensity * run.dragArea) / (2 * run.mass);
  let side = programme.first === 'left' ? -1 : 1;
  let edge = 0.3;
  let balanced = true;
  const rate = (chi: number, speed: number, down: number) => {
    ground.sine(down, 0, six);
    const sine = six[0];
    ground.cosine(down, 0, six);
    const cosine = six[0];
    ground.curvature(down, 0, six);
    const along = Math.cos(chi);
    const normal = Math.max(0.05 * GRAVITY, GRAVITY * cosine + speed * speed * six[0] * along * along);
    const outward = GRAVITY * sine * Math.sin(chi) * side;
    const q = outward / normal;
    const limit = Math.sqrt(1 + q * q);
    let lean = Math.max(edge, 0.02);
    for (let i = 0; i < 60; i++) {
      const tilt = Math.min(Math.max(lean, 0), steepest);
      run.turn.curvature(tilt, (run.outerShare * run.mass * normal) / Math.cos(tilt), six);
      const c = (speed * speed * Math.cos(tilt) * six[0]) / normal;
      balanced = c <= limit;
      const next = idealLean(Math.min(c, limit), q);
      const change = Math.abs(next - lean);
      lean = next;
      if (change < 1e-12) break;
    }
    edge = Math.min(Math.max(lean, 0), steepest);
    const sideways = normal * Math.tan(edge);
    const load = normal / Math.cos(edge);
    return {
      turning: (side * (sideways - outward)) / speed,
      gaining: GRAVITY * sine * along - run.friction * load - air * speed * speed,
      falling: speed * along,
      lean: side * edge,
      curvature: (side * (sideways - outward)) / (speed * speed),
      normal,
      sideways: side * sideways,
    };
  };
  const rows: number[][] = [];
  const turns = [0];
  let chi = heading;
  let speed = run.startSpeed;
  let down = 0;
  let end: PointTurns['end'] = 'time over';
  for (let i = 0; i * step < LONGEST; i++) {
    const a = rate(chi, speed, down);
    rows.push([chi, speed, down, a.lean, a.curvature, a.normal, a.sideways]);
    if (!balanced && most === undefined) {
      end = 'no balanced lean';
      break;
    }
    const b = rate(chi + step * a.turning, Math.max(0.1, speed + step * a.gaining), down + step * a.falling);
    const before = programme.traverse - side * chi;
    chi += 0.5 * step * (a.turning + b.turning);
    speed += 0.5 * step * (a.gaining + b.gaining);
    down += 0.5 * step * (a.falling + b.falling);
    if (speed < 1.2 * STOPPED) {
      end = 'stopped';
      break;
    }
    const after = programme.traverse - side * chi;
    if (after <= 0) {
      turns.push(i + before / (before - after));
      side = -side;
      if (turns.length > programme.turns) {
        const last = rate(chi, speed, down);
        rows.push([chi, speed, down, last.lean, last.curvature, last.normal, last.sideways]);
        end = 'programme over';
        break;
      }
    }
  }
  const column = (c: number) => Float64Array.from(rows, row => row[c]);
  return {
    step,
    heading: column(0),
    speed: column(1),
    down: column(2),
    lean: column(3),
    curvature: column(4),
    normal: column(5),
    sideways: column(6),
    turns,
    end,
  };
}
