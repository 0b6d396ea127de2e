import { hermite } from '../flex/index.ts';
import type { Equilibrium } from './groove.ts';
import type { SkiMesh } from './ski-mesh.ts';
import { DOFS } from './ski-stiffness.ts';

/** An answer near the question asked, and its share in the start made of several; the shares add up to one. */
export interface Neighbour {
  readonly answer: Equilibrium;
  readonly share: number;
}

/**
 * Fills the unknowns with a start near the answer at an edge angle (rad), from neighbouring answers of any mesh.
 *
 * What is kept, or combined, is not the height of the base but how deep each point is in: tipping the ski further
 * lifts its sidecut by millimetres, while snow gives way by tenths of one, so that heights kept would throw half
 * the edge out of its groove.
 */
export function beginNear(
  mesh: SkiMesh,
  neighbours: readonly Neighbour[],
  edgeAngle: number,
  unknowns: Float64Array,
): void {
  const { halfWidth, slope } = mesh;
  const shape = new Float64Array(4);
  unknowns.fill(0);
  for (const { answer, share } of neighbours) {
    const at = answer.x.length === mesh.x.length ? null : answer.x;
    const angle = answer.conditions.edgeAngle;
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    let seen = 0;
    for (let i = 0; i < halfWidth.length; i++) {
      let height = answer.height[i];
      let tilt = answer.slope[i];
      let twist = answer.twist[i];
      if (at) {
        while (seen < at.length - 2 && at[seen + 1] < mesh.x[i]) seen++;
        const h = at[seen + 1] - at[seen];
        const s = (mesh.x[i] - at[seen]) / h;
        const t = 1 - s;
        hermite(s, h, shape);
        height =
          shape[0] * answer.height[seen] +
          shape[1] * answer.slope[seen] +
          shape[2] * answer.height[seen + 1] +
          shape[3] * answer.slope[seen + 1];
        tilt =
          (6 * s * t * (answer.height[seen + 1] - answer.height[seen])) / h +
          t * (1 - 3 * s) * answer.slope[seen] +
          s * (3 * s - 2) * answer.slope[seen + 1];
        twist = t * answer.twist[seen] + s * answer.twist[seen + 1];
      }
      unknowns[DOFS * i] += share * (halfWidth[i] * Math.sin(angle - twist) - height * cos);
      unknowns[DOFS * i + 1] += share * (slope[i] * sin - tilt * cos);
      unknowns[DOFS * i + 2] += share * twist;
    }
  }
  const sin = Math.sin(edgeAngle);
  const cos = Math.cos(edgeAngle);
  for (let i = 0; i < halfWidth.length; i++) {
    const local = edgeAngle - unknowns[DOFS * i + 2];
    unknowns[DOFS * i] = (halfWidth[i] * Math.sin(local) - unknowns[DOFS * i]) / cos;
    unknowns[DOFS * i + 1] = (slope[i] * sin - unknowns[DOFS * i + 1]) / cos;
  }
}
