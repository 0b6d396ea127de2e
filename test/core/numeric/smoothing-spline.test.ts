import { describe, expect, it } from 'vitest';
import { smoothingSpline } from '../../../core/numeric/index.ts';

const x = [0, 0.1, 0.25, 0.4, 0.7, 0.9, 1.3];
const y = [1, 1.4, 0.9, 1.1, 2, 1.7, 1.2];

describe('smoothing spline', () => {
  it('interpolates at tolerance 0, as a natural spline', () => {
    const spline = smoothingSpline(x, y, 0);
    x.forEach((at, i) => {
      expect(spline.value(at)).toBeCloseTo(y[i], 12);
    });
    expect(spline.curvature(0)).toBe(0);
    expect(spline.curvature(1.3)).toBe(0);
  });

  it('stays just within the tolerance', () => {
    for (const tolerance of [0.01, 0.1, 0.2]) {
      expect(smoothingSpline(x, y, tolerance).residual).toBeCloseTo(tolerance, 6);
    }
  });

  it('is the least-squares line when that is close enough', () => {
    const spline = smoothingSpline(x, y, 10);
    const n = x.length;
    const mx = x.reduce((a, b) => a + b) / n;
    const my = y.reduce((a, b) => a + b) / n;
    const slope =
      x.reduce((sum, at, i) => sum + (at - mx) * (y[i] - my), 0) /
      x.reduce((sum, at) => sum + (at - mx) ** 2, 0);
    for (const at of [-0.3, 0.2, 1, 1.5]) expect(spline.value(at)).toBeCloseTo(my + slope * (at - mx), 6);
  });

  it('is smooth across its knots and straight beyond them', () => {
    const spline = smoothingSpline(x, y, 0.05);
    const e = 1e-7;
    for (const at of x) {
      expect(spline.value(at - e)).toBeCloseTo(spline.value(at + e), 4);
      expect(spline.slope(at - e)).toBeCloseTo(spline.slope(at + e), 4);
      expect(spline.curvature(at - e)).toBeCloseTo(spline.curvature(at + e), 3);
    }
    expect(spline.value(1.8)).toBeCloseTo(spline.value(1.3) + 0.5 * spline.slope(1.3), 9);
    expect(spline.curvature(-1)).toBe(0);
  });

  it('does not depend on the unit of x', () => {
    const spline = smoothingSpline(x, y, 0.1);
    const mm = smoothingSpline(
      x.map(at => at * 1000),
      y,
      0.1,
    );
    expect(mm.value(550)).toBeCloseTo(spline.value(0.55), 9);
    expect(mm.curvature(550) * 1e6).toBeCloseTo(spline.curvature(0.55), 6);
  });

  it('says what it needs', () => {
    expect(() => smoothingSpline([0, 1], [0, 1], 0)).toThrow('accepted is 3 or more');
  });
});
