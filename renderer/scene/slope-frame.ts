import type { Vector3 } from 'three';

/** Ground down the fall line: what a slope profile of the run model offers, by y (m along the ground). */
export interface Ground {
  /** Sine of the slope angle at y. */
  sine(y: number): number;
  /** Height over the start, m; falls as y grows. */
  height(y: number): number;
  /** Horizontal distance from the start, m. */
  horizontal(y: number): number;
  /** The inverse of `horizontal`. */
  along(horizontal: number): number;
}

/** Ground of one slope angle, rad. */
export function evenGround(angle: number): Ground {
  const sin = Math.sin(angle);
  const cos = Math.cos(angle);
  return { sine: () => sin, height: y => -y * sin, horizontal: y => y * cos, along: h => h / cos };
}

/**
 * Slope coordinates to the world of the scene. Slope: x across the hill to the skier's right looking down it, y
 * along the ground down the fall line, z along the normal. World: X = x, Y up, −Z the horizontal way down.
 */
export class SlopeFrame {
  readonly ground: Ground;

  constructor(ground: Ground) {
    this.ground = ground;
  }

  /** World position of the slope point (x, y, z). */
  place(x: number, y: number, z: number, out: Vector3): Vector3 {
    const sin = this.ground.sine(y);
    const cos = Math.sqrt(1 - sin * sin);
    return out.set(x, this.ground.height(y) + z * cos, -this.ground.horizontal(y) - z * sin);
  }

  /** World direction of the slope vector (dx, dy, dz) at y. */
  direct(dx: number, dy: number, dz: number, y: number, out: Vector3): Vector3 {
    const sin = this.ground.sine(y);
    const cos = Math.sqrt(1 - sin * sin);
    return out.set(dx, -dy * sin + dz * cos, -dy * cos - dz * sin);
  }

  /** Slope coordinates of a world point on the snow. */
  locate(point: Vector3): { x: number; y: number } {
    return { x: point.x, y: this.ground.along(-point.z) };
  }
}
