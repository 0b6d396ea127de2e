import { hermite } from '../flex/index.ts';
import type { CarveConditions, CarvingSki, Equilibrium } from './groove.ts';
import type { GrooveBalance } from './groove-balance.ts';
import type { SkiMesh } from './ski-mesh.ts';
import { DOFS } from './ski-stiffness.ts';
import { fitTrack, trackPart } from './track-radius.ts';
import { wallAreaOf } from './wall-area.ts';

/**
 * Reads the answer off a balanced ski: copies of its fields, and the radii of the track its edge follows. The
 * returned function takes the conditions and the Newton steps spent.
 */
export function equilibriumReader(
  ski: CarvingSki,
  mesh: SkiMesh,
  balance: GrooveBalance,
  unknowns: Float64Array,
): (conditions: CarveConditions, iterations: number) => Equilibrium {
  const { length } = ski.edge;
  const nodes = mesh.x.length;
  const pressedLateral = new Float64Array(balance.pressedAt.length);
  const shape = new Float64Array(4);

  /** Fits the track through the points the snow presses on, the edge curved between the nodes as the base is. */
  function tracks(edgeAngle: number, local: Float64Array, lateral: Float64Array) {
    const { pressedAt, pressedForce, pressedPoints } = balance;
    const { x, slope, halfWidth } = mesh;
    const sin = Math.sin(edgeAngle);
    let ahead = nodes - 1;
    let boot = 0;
    for (let k = 0; k < pressedPoints; k++) {
      while (ahead > 1 && pressedAt[k] < x[ahead - 1]) ahead--;
      const h = x[ahead] - x[ahead - 1];
      const turn = (local[ahead - 1] - local[ahead]) / h;
      const lateralSlope = (i: number) =>
        slope[i] * Math.cos(local[i]) +
        halfWidth[i] * turn * Math.sin(local[i]) +
        unknowns[DOFS * i + 1] * sin;
      hermite((pressedAt[k] - x[ahead - 1]) / h, h, shape);
      pressedLateral[k] =
        shape[0] * lateral[ahead - 1] +
        shape[1] * lateralSlope(ahead - 1) +
        shape[2] * lateral[ahead] +
        shape[3] * lateralSlope(ahead);
      if (pressedAt[k] >= ski.bootCentre) boot = k + 1;
    }
    const part = (first: number, last: number) =>
      fitTrack(pressedAt, pressedLateral, pressedForce, first, last);
    return { whole: part(0, pressedPoints), front: part(0, boot), rear: part(boot, pressedPoints) };
  }

  return (conditions, iterations) => {
    const height = new Float64Array(nodes);
    const slope = new Float64Array(nodes);
    const twist = new Float64Array(nodes);
    const localEdgeAngle = new Float64Array(nodes);
    const lateral = new Float64Array(nodes);
    const lineLoad = new Float64Array(nodes);
    const sin = Math.sin(conditions.edgeAngle);
    let maxPenetration = 0;
    for (let i = 0; i < nodes; i++) {
      height[i] = unknowns[DOFS * i];
      slope[i] = unknowns[DOFS * i + 1];
      twist[i] = unknowns[DOFS * i + 2];
      localEdgeAngle[i] = conditions.edgeAngle - twist[i];
      lateral[i] = mesh.halfWidth[i] * Math.cos(localEdgeAngle[i]) + height[i] * sin;
      lineLoad[i] = balance.nodeForce[i] / mesh.share[i];
      maxPenetration = Math.max(maxPenetration, balance.penetration[i]);
    }
    const { whole, rear, front } = tracks(conditions.edgeAngle, localEdgeAngle, lateral);
    return {
      ok: true,
      conditions,
      x: Float64Array.from(mesh.x),
      height,
      slope,
      twist,
      penetration: Float64Array.from(balance.penetration),
      groove: Float64Array.from(balance.groove),
      lineLoad,
      localEdgeAngle,
      lateral,
      turnRadius: 1 / whole.curvature,
      track: whole,
      rear: trackPart(rear, whole, length),
      front: trackPart(front, whole, length),
      maxPenetration,
      wallArea: wallAreaOf(mesh.x, balance.penetration),
      twistTip: twist[nodes - 1],
      twistTail: twist[0],
      iterations,
      residual: balance.imbalance(conditions, ski.bootCentre),
    };
  };
}
