import type { CarvingSki } from './groove.ts';

/** Stations along the ski, rear contact point first, with a node at the boot centre and at each end of the sole. SI. */
export interface SkiMesh {
  readonly x: Float64Array;
  /** Length of edge each node answers for (trapezoid rule), m. */
  readonly share: Float64Array;
  readonly halfWidth: Float64Array;
  readonly slope: Float64Array;
  /** First and last node under the boot sole. */
  readonly soleFirst: number;
  readonly soleLast: number;
}

/** Share of the spacing given up at a contact line, and over what share of the part. */
const CROWDING = 0.88;
const CROWDED = 0.12;

/** Places a share of the nodes from a contact line (0) inwards, crowded where the load piles up at the end. */
function crowded(share: number): number {
  const place = (s: number) => s - CROWDING * CROWDED * (1 - Math.exp(-s / CROWDED));
  return place(share) / place(1);
}

/**
 * Nodes behind the sole, under its two halves and ahead of it; about `elements` elements in all, an eighth as long
 * at the contact lines as elsewhere, since a ski too stiff for its load stands on a few millimetres there.
 */
export function skiMesh(ski: CarvingSki, elements: number): SkiMesh {
  const length = ski.edge.length;
  const { bootCentre, soleLength } = ski;
  const bounds = [0, bootCentre - soleLength / 2, bootCentre, bootCentre + soleLength / 2, length];
  const counts = [0, 1, 2, 3].map(part => {
    const share = (bounds[part + 1] - bounds[part]) / length;
    return share > 1e-9 ? Math.max(1, Math.round(elements * share)) : 0;
  });
  const x = new Float64Array(counts[0] + counts[1] + counts[2] + counts[3] + 1);
  let node = 0;
  for (let part = 0; part < 4; part++) {
    const span = bounds[part + 1] - bounds[part];
    for (let i = 0; i < counts[part]; i++) {
      const share = i / counts[part];
      const placed = part === 0 ? crowded(share) : part === 3 ? 1 - crowded(1 - share) : share;
      x[node++] = bounds[part] + span * placed;
    }
  }
  x[node] = length;
  const share = new Float64Array(x.length);
  for (let i = 0; i + 1 < x.length; i++) {
    const half = 0.5 * (x[i + 1] - x[i]);
    share[i] += half;
    share[i + 1] += half;
  }
  return {
    x,
    share,
    halfWidth: x.map(at => ski.edge.halfWidth(at)),
    slope: x.map(at => ski.edge.slope(at)),
    soleFirst: counts[0],
    soleLast: counts[0] + counts[1] + counts[2],
  };
}
