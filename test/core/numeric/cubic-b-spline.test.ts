import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greville, splineBasis, splineRow } from '../../../core/numeric/index.ts';

describe('splineRow', () => {
  it('sums to one, and its slopes are those of its values', () => {
    const basis = splineBasis([0, 1, 1.5, 4, 5]);
    const c = [1, -2, 0.5, 3, 0, 1, 2].slice(0, basis.size);
    const at = (y: number, part: 'value' | 'slope' | 'second') => {
      const row = splineRow(basis, y);
      return row[part].reduce((sum, each, i) => sum + each * c[row.first + i], 0);
    };
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 4.99, noNaN: true }), y => {
        expect(splineRow(basis, y).value.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
        const h = 1e-5;
        expect((at(y + h, 'value') - at(y - h, 'value')) / (2 * h)).toBeCloseTo(at(y, 'slope'), 3);
        expect((at(y + h, 'slope') - at(y - h, 'slope')) / (2 * h)).toBeCloseTo(at(y, 'second'), 2);
      }),
    );
  });

  it('meets its end coefficients', () => {
    const basis = splineBasis([0, 2, 3]);
    expect(splineRow(basis, 0).value[0]).toBeCloseTo(1, 12);
    expect(splineRow(basis, 3).value[3]).toBeCloseTo(1, 12);
  });

  it('gives a straight line back from its values at the Greville abscissae', () => {
    const basis = splineBasis([0, 1, 1.5, 4, 5]);
    const c = greville(basis).map(y => 3 - 2 * y);
    for (const y of [0, 0.4, 1, 2.2, 4.7, 5]) {
      const row = splineRow(basis, y);
      expect(row.value.reduce((sum, each, i) => sum + each * c[row.first + i], 0)).toBeCloseTo(3 - 2 * y, 12);
    }
  });
});
