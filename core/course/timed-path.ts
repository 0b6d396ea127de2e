import { GRAVITY } from '../run/index.ts';
import type { CourseConditions } from './gate-conditions.ts';

/**
 * Time down a path x(y) and what it asks of ski and skier, interval by interval, with the derivatives needed
 * to improve the path. Energy e = v²/2 is carried from interval to interval:
 * e' = e + g sinα h − (μ F/m + ρ C_dA e/m) ds, time 2 ds/(v + v'). Speed beyond what the greatest lean holds
 * at the interval's curvature is braked away. All per unit of mass, SI and rad.
 */
export interface Interval {
  /** e at the lower end. */
  energy: number;
  /** s. */
  seconds: number;
  /** Lean of the resultant, rad, positive to the right. */
  lean: number;
  /** Work of braking over the length of the interval, m/s². */
  braking: number;
  /** 1/m, positive to the right. */
  curvature: number;
}

/** What acts on a point mass on its path, for each unit of its mass. */
export interface PathPhysics {
  /** g sinα, m/s². */
  readonly pull: number;
  /** g cosα, m/s². */
  readonly press: number;
  /** μ. */
  readonly friction: number;
  /** ρ C_dA/m, 1/m. */
  readonly drag: number;
  /** Tangent of the greatest lean that holds; infinite is no limit. */
  readonly mostSideways: number;
}

/** Forces on the path under the course’s conditions, SI; `mostSideways` as in `PathPhysics`. */
export function pathPhysics(conditions: CourseConditions, mostSideways: number): PathPhysics {
  return {
    pull: GRAVITY * Math.sin(conditions.slope),
    press: GRAVITY * Math.cos(conditions.slope),
    friction: conditions.friction,
    drag: (conditions.airDensity * conditions.dragArea) / conditions.mass,
    mostSideways,
  };
}

/** Energy below which a path is taken to stand still, m²/s². */
export const standing = 1e-6;

/** Advances one interval: `h` its extent down the hill, `slope` dx/dy and `bend` d²x/dy² at its middle. */
export function advance(
  physics: PathPhysics,
  h: number,
  slope: number,
  bend: number,
  energy: number,
  out: Interval,
): void {
  const stretch = Math.sqrt(1 + slope * slope);
  const ds = h * stretch;
  const { pull, press, friction, drag } = physics;
  const curvature = bend / (stretch * stretch * stretch);
  const bent = Math.abs(curvature);
  const downward = ((curvature < 0 ? -pull : pull) * slope) / stretch;
  // Nearly straight, no speed leans the skier that far; the floor on curvature keeps the bound finite.
  const most = (0.5 * (physics.mostSideways * press - downward)) / Math.max(bent, 1e-3);
  const middle = lesser(
    Math.max(standing, energy + 0.5 * (pull * h - (friction * press + drag * energy) * ds)),
    most,
  );
  const sideways = (2 * middle * curvature + (pull * slope) / stretch) / press;
  const load = press * Math.sqrt(1 + sideways * sideways);
  const free = Math.max(standing, energy + pull * h - (friction * load + drag * middle) * ds);
  const next = lesser(free, most);
  out.energy = next;
  out.seconds = (2 * ds) / (Math.sqrt(2 * Math.max(0, energy)) + Math.sqrt(2 * next));
  out.lean = Math.atan(sideways);
  out.braking = (free - next) / ds;
  out.curvature = curvature;
}

/** The lesser of two, rounded off over 2 % so that its slope does not jump. */
export function lesser(value: number, bound: number): number {
  if (value <= 0.98 * bound) return value;
  const round = 0.02 * bound;
  const over = value - bound + round;
  return over >= 2 * round ? bound : value - (over * over) / (4 * round);
}
