import type { Line } from '../../core/course/index.ts';

/** Points of a path on the slope, m: x to the right looking down, y down the fall line. */
export interface Path {
  readonly x: number[];
  readonly y: number[];
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** +1 turns to the right. */
  readonly side: number;
}

/** Arcs are drawn with a point every so often, rad. */
const ARC_STEP = 0.04;

/**
 * The path of a ski that turns more tightly than the line: an arc of its own radius (m) touching the line at
 * each gate, the arcs joined by straight traverses along their common tangents. Null where neighbouring arcs
 * leave no room for a straight, so the line itself is what can be drawn. [plane geometry]
 */
export function arcsAndTraverses(line: Line, radii: readonly number[]): Path | null {
  const last = line.s.length - 1;
  const circles: Circle[] = [
    { x: line.x[0], y: line.y[0], radius: 0, side: 1 },
    ...radii.map((radius, gate) => {
      const at = line.gateSamples[gate];
      const side = line.turns[gate];
      const heading = line.heading[at];
      return {
        x: line.x[at] + side * radius * Math.cos(heading),
        y: line.y[at] - side * radius * Math.sin(heading),
        radius,
        side,
      };
    }),
    { x: line.x[last], y: line.y[last], radius: 0, side: 1 },
  ];
  const headings: number[] = [];
  for (let i = 0; i + 1 < circles.length; i++) {
    const heading = tangentHeading(circles[i], circles[i + 1]);
    if (heading === null) return null;
    headings.push(heading);
  }
  const path: Path = { x: [], y: [] };
  circles.forEach((circle, i) => {
    const from = headings[Math.max(0, i - 1)];
    const to = headings[Math.min(headings.length - 1, i)];
    // An arc turns to its own side; the other way round there is none, and the traverses meet.
    const turned = circle.side * (to - from) > 0 ? to - from : 0;
    const steps = circle.radius > 0 ? Math.max(1, Math.ceil(Math.abs(turned) / ARC_STEP)) : 0;
    for (let k = 0; k <= steps; k++) {
      const heading = from + (steps > 0 ? (turned * k) / steps : 0);
      path.x.push(circle.x - circle.side * circle.radius * Math.cos(heading));
      path.y.push(circle.y + circle.side * circle.radius * Math.sin(heading));
    }
  });
  return path;
}

/** Heading of the straight that leaves one circle and meets the next along both; null where they overlap. */
function tangentHeading(from: Circle, to: Circle): number | null {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const apart = Math.hypot(dx, dy);
  const across = to.side * to.radius - from.side * from.radius;
  if (!(Math.abs(across) < apart)) return null;
  return Math.atan2(dx, dy) - Math.asin(across / apart);
}
