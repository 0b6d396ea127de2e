export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Radius of the circle through three points, R = abc/(4A), m; Infinity when they lie on a line. */
export function circleThrough(p: Point, q: Point, r: Point): number {
  const a = Math.hypot(q.x - r.x, q.y - r.y);
  const b = Math.hypot(p.x - r.x, p.y - r.y);
  const c = Math.hypot(p.x - q.x, p.y - q.y);
  const twiceArea = Math.abs((q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y));
  return twiceArea === 0 ? Number.POSITIVE_INFINITY : (a * b * c) / (2 * twiceArea);
}

/** Height of the arc over a chord, exact: d = R − √(R² − L²/4); NaN when the chord is longer than 2R. */
export function arcHeight(chord: number, radius: number): number {
  // Written without the difference of two near-equal numbers.
  return chord ** 2 / 4 / (radius + Math.sqrt(radius ** 2 - chord ** 2 / 4));
}

/** A circle open towards +y: radius, where its lowest point stands along the chord, and how high. m. */
export interface FittedCircle {
  readonly radius: number;
  readonly centre: number;
  readonly bottom: number;
}

/**
 * The circle of least squares: the sum of squared distances from the points to the circle is
 * least. Gauss-Newton on centre and radius from a first guess of the radius; the points are a shallow arc
 * open towards +y. Works on the residual h(x) = circle − point in y, which for such an arc differs from
 * the normal distance by the slope squared only. The radius is NaN where no circle is found.
 */
export function fitCircle(points: readonly Point[], firstRadius: number): FittedCircle {
  const n = points.length;
  const xm = points.reduce((sum, point) => sum + point.x, 0) / n;
  const span = Math.max(...points.map(point => Math.abs(point.x - xm)));
  let radius = firstRadius;
  let centre = xm;
  let bottom = Math.min(...points.map(point => point.y));
  for (let step = 0; step < 50; step += 1) {
    // y = bottom + R − √(R² − (x − centre)²): Jacobian columns for bottom, centre and curvature 1/R.
    const rows = points.map(({ x, y }) => {
      const u = x - centre;
      const root = Math.sqrt(radius ** 2 - u ** 2);
      const height = (u * u) / (radius + root);
      return { r: y - bottom - height, j: [1, -u / root, (radius ** 2 * height) / root] as const };
    });
    const [dBottom, dCentre, dCurvature] = solveThree(rows);
    bottom += dBottom;
    centre += dCentre;
    radius = 1 / (1 / radius + dCurvature);
    if (!Number.isFinite(radius) || Math.abs(radius) < span) return { radius: Number.NaN, centre, bottom };
    if (Math.abs(dCurvature * radius) < 1e-13 && Math.abs(dCentre) < 1e-13 * span) break;
  }
  return { radius, centre, bottom };
}

/** Least squares in three unknowns by the normal equations, with columns scaled to like size. */
function solveThree(
  rows: readonly { r: number; j: readonly [number, number, number] }[],
): [number, number, number] {
  const scale = [0, 1, 2].map(k => Math.sqrt(rows.reduce((sum, row) => sum + row.j[k] ** 2, 0)));
  const a = [0, 1, 2].map(p =>
    [0, 1, 2].map(q => rows.reduce((sum, row) => sum + (row.j[p] / scale[p]) * (row.j[q] / scale[q]), 0)),
  );
  const g = [0, 1, 2].map(p => rows.reduce((sum, row) => sum + (row.j[p] / scale[p]) * row.r, 0));
  const det = (c0: readonly number[], c1: readonly number[], c2: readonly number[]): number =>
    c0[0] * (c1[1] * c2[2] - c1[2] * c2[1]) -
    c1[0] * (c0[1] * c2[2] - c0[2] * c2[1]) +
    c2[0] * (c0[1] * c1[2] - c0[2] * c1[1]);
  const whole = det(a[0], a[1], a[2]);
  return [
    det(g, a[1], a[2]) / whole / scale[0],
    det(a[0], g, a[2]) / whole / scale[1],
    det(a[0], a[1], g) / whole / scale[2],
  ];
}
