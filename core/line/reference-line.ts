/**
 * A smooth line past the gates that a run is measured against: how far along it, how far beside it. Cubic Hermite
 * pieces from gate to gate, each over a parameter from 0 to 1; x to the right, y down the fall line, m; headings
 * from the fall line, rad, right positive.
 */

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** A place on one piece. */
export interface LinePlace {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  /** 1/m, positive to the right. */
  readonly curvature: number;
  /** Metres for one unit of the parameter. */
  readonly metres: number;
}

/** The place at `part` (0 to 1) of the piece between two points. */
export function placeBetween(from: LinePoint, to: LinePoint, part: number): LinePlace {
  const reach = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, dx, ddx] = hermite(
    from.x,
    reach * Math.sin(from.heading),
    to.x,
    reach * Math.sin(to.heading),
    part,
  );
  const [y, dy, ddy] = hermite(
    from.y,
    reach * Math.cos(from.heading),
    to.y,
    reach * Math.cos(to.heading),
    part,
  );
  const metres = Math.hypot(dx, dy);
  return {
    x,
    y,
    heading: Math.atan2(dx, dy),
    curvature: (dy * ddx - dx * ddy) / metres ** 3,
    metres,
  };
}

/** Value and two slopes of the cubic with these values and slopes at 0 and 1. */
function hermite(a: number, da: number, b: number, db: number, t: number): [number, number, number] {
  const c2 = 3 * (b - a) - 2 * da - db;
  const c3 = 2 * (a - b) + da + db;
  return [a + t * (da + t * (c2 + t * c3)), da + t * (2 * c2 + 3 * t * c3), 2 * c2 + 6 * t * c3];
}
