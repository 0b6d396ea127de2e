import { describe, expect, it } from 'vitest';
import { arcHeight, circleThrough, sidecut } from '../../core/shape/index.ts';
import { skiWith } from '../core/shape/ski.ts';

// Radius rule R[m] = L²/(2000 (S + H − 2W)), mm: international federation equipment specification,
// control procedure as reported [seen in part; confirm in the specification's annex]. Values [derived].
describe('rulebook radius', () => {
  it.each([
    { length: 1630, front: 90.5, rear: 83.0, waist: 65.0, radius: 30.539 },
    { length: 1394, front: 110.0, rear: 99.0, waist: 66.0, radius: 12.618 },
  ])('L $length S $front H $rear W $waist → $radius m', ({ length, front, rear, waist, radius }) => {
    const cut = sidecut(
      skiWith({
        contactLength: length / 1000,
        tipWidth: front / 1000,
        tailWidth: rear / 1000,
        waistWidth: waist / 1000,
      }),
    );
    expect(cut.radius).toBeCloseTo(radius, 3);
    expect((length * length) / (2000 * (front + rear - 2 * waist))).toBeCloseTo(cut.radius, 9);
  });

  // True arcs read by the control procedure: 13.000 m reads 12.965 m, 30.000 m reads 29.919 m [derived].
  // The procedure's length is 0.8 of the front part and 0.9 of the rear part.
  it.each([
    { total: 1650, rearPart: 740, waist: 66, front: 106.8, rear: 100.142, true: 13, radius: 12.965 },
    { total: 1930, rearPart: 860, waist: 65, front: 89.43, rear: 84.973, true: 30, radius: 29.919 },
  ])('a true arc of $true m reads $radius m', row => {
    const length = 0.8 * (row.total - row.rearPart) + 0.9 * row.rearPart;
    const widths = { tipWidth: row.front / 1000, tailWidth: row.rear / 1000, waistWidth: row.waist / 1000 };
    const ski = skiWith({ contactLength: length / 1000, ...widths });
    expect(sidecut(ski).radius).toBeCloseTo(row.radius, 2);
    // Told where the waist is, the exact circle through the same three points has the true radius.
    const reported = sidecut({ ...ski, waistStation: (0.9 * row.rearPart) / 1000 });
    expect(Math.abs(reported.circleRadius / row.true - 1)).toBeLessThan(2e-4);
    expect(Math.abs(reported.radius / row.true - 1)).toBeLessThan(2e-3);
  });
});

// Circular sidecut depth d(L, R), small form and (exact circle) [derived].
describe('sidecut depth of a circular arc', () => {
  it.each([
    { length: 1.4, radius: 13, small: 18.846, exact: 18.86 },
    { length: 1.45, radius: 13, small: 20.216, exact: 20.232 },
    { length: 1.65, radius: 30, small: 11.344, exact: 11.346 },
  ])('L $length m, R $radius m', ({ length, radius, small, exact }) => {
    const end = 0.066 + (2 * small) / 1000;
    const ski = skiWith({ contactLength: length, waistWidth: 0.066, tipWidth: end, tailWidth: end });
    expect(Math.abs(sidecut(ski).radius - radius)).toBeLessThan(radius * 1e-4);
    expect(arcHeight(length, radius) * 1000).toBeCloseTo(exact, 2);
    const d = arcHeight(length, radius);
    expect(length ** 2 / (8 * d) + d / 2).toBeCloseTo(radius, 9);
    expect(circleThrough({ x: 0, y: d }, { x: length / 2, y: 0 }, { x: length, y: d })).toBeCloseTo(
      radius,
      9,
    );
  });
});

// Propagation of independent uncertainties, (u_R/R)² = (2u_L/L)² + (u_S² + u_T² + 4u_W²)/(S + T − 2W)²
// [derived], with 0.25 mm for widths and 1 mm for length.
describe('uncertainty of the radius', () => {
  it('is that of the formula with the waist midway', () => {
    const ski = skiWith({ contactLength: 1.63, tipWidth: 0.0905, tailWidth: 0.083, waistWidth: 0.065 });
    const cut = sidecut(ski);
    const relative = Math.sqrt((2 / 1630) ** 2 + (6 * 0.25 ** 2) / (90.5 + 83 - 130) ** 2);
    expect(cut.radiusUncertainty / cut.radius).toBeCloseTo(relative, 12);
    expect(sidecut(ski, { uWidth: 0.5e-3 }).radiusUncertainty).toBeGreaterThan(1.9 * cut.radiusUncertainty);
  });
});
