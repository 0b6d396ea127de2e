import { Vector3 } from 'three';
import { type ArcPath, pointOnArc } from './arc.ts';
import type { SlopeFrame } from './slope-frame.ts';

const POINTS = 24;
/** A skier on the first arc stands this high over it, m. */
const FIGURE = 1.5;
/** The label of an arc stands this far beyond its end, m. */
export const LABEL_GAP = 0.5;

export interface ArcExtent {
  /** Slope metres around all arcs. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** World points that a picture of the arcs has to hold. */
  readonly points: readonly Vector3[];
}

/** How far arcs reach, with the labels at their ends and a skier on the first of them. */
export function arcExtent(paths: readonly ArcPath[], frame: SlopeFrame): ArcExtent {
  const points: Vector3[] = [];
  const at = { x: 0, y: 0, heading: 0 };
  let left = Infinity;
  let right = -Infinity;
  let top = Infinity;
  let bottom = -Infinity;
  paths.forEach((path, k) => {
    for (let i = 0; i <= POINTS; i++) {
      const p = pointOnArc(path, (path.length * i) / POINTS, at);
      left = Math.min(left, p.x);
      right = Math.max(right, p.x);
      top = Math.min(top, p.y);
      bottom = Math.max(bottom, p.y);
      points.push(frame.place(p.x, p.y, 0, new Vector3()));
      if (k === 0 && i % (POINTS / 2) === 0) points.push(frame.place(p.x, p.y, FIGURE, new Vector3()));
    }
    const end = pointOnArc(path, path.length + LABEL_GAP, at);
    points.push(frame.place(end.x, end.y, 0.1, new Vector3()));
  });
  return { left, right, top, bottom, points };
}
