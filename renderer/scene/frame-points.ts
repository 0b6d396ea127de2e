import { Vector3 } from 'three';
import type { CameraPose } from './camera-rig.ts';

/** Share of the picture, across and up, in which the points are to lie: the rest is for their labels. */
const ACROSS = 0.84;
const UPWARDS = 0.8;

const back = new Vector3();
const right = new Vector3();
const up = new Vector3();
const offset = new Vector3();

/**
 * Sets the target and the spans of a pose, whose direction and field of view are given, so that every point is in
 * the picture and they stand in its middle: by what the camera sees, since near points lie further from the
 * middle than far ones.
 * @param aspect width over height of the picture
 */
export function framePoints(points: readonly Vector3[], aspect: number, out: CameraPose): void {
  if (points.length === 0) return;
  back.copy(out.direction).normalize();
  const azimuth = Math.atan2(back.x, back.z);
  right.set(Math.cos(azimuth), 0, -Math.sin(azimuth));
  up.crossVectors(back, right);
  const half = Math.tan((out.fov * Math.PI) / 360);
  out.target.set(0, 0, 0);
  for (const p of points) out.target.addScaledVector(p, 1 / points.length);
  let distance = 0;
  for (let round = 0; round < 6; round++) {
    distance = 0;
    for (const p of points) {
      offset.subVectors(p, out.target);
      const near = offset.dot(back);
      const across = Math.abs(offset.dot(right)) / (ACROSS * aspect);
      const upwards = Math.abs(offset.dot(up)) / UPWARDS;
      distance = Math.max(distance, near + Math.max(across, upwards) / half);
    }
    if (round === 5) break;
    let left = Infinity;
    let most = -Infinity;
    let low = Infinity;
    let high = -Infinity;
    for (const p of points) {
      offset.subVectors(p, out.target);
      const far = Math.max(1e-3, distance - offset.dot(back));
      const across = offset.dot(right) / far;
      const upwards = offset.dot(up) / far;
      left = Math.min(left, across);
      most = Math.max(most, across);
      low = Math.min(low, upwards);
      high = Math.max(high, upwards);
    }
    out.target.addScaledVector(right, ((left + most) / 2) * distance);
    out.target.addScaledVector(up, ((low + high) / 2) * distance);
  }
  out.wide = 0;
  out.high = 2 * half * distance;
}
