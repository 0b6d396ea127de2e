import { describe, expect, test } from 'vitest';
import { lowestModes, symmetricEigen } from '../../../core/numeric/eigen.ts';
import { addSymmetric, multiplySymmetric, symmetricBand } from '../../../core/numeric/index.ts';

test('a small symmetric eigenproblem is solved', () => {
  const { values, vectors } = symmetricEigen([
    Float64Array.of(2, -1, 0),
    Float64Array.of(-1, 2, -1),
    Float64Array.of(0, -1, 2),
  ]);
  [2 - Math.SQRT2, 2, 2 + Math.SQRT2].forEach((value, i) => {
    expect(values[i]).toBeCloseTo(value, 12);
  });
  expect(Math.abs(vectors[0][1] / vectors[0][0])).toBeCloseTo(Math.SQRT2, 10);
});

describe('a free chain of equal springs and masses', () => {
  const n = 40;
  const stiffness = symmetricBand(n, 1);
  const mass = symmetricBand(n, 1);
  for (let i = 0; i < n; i++) {
    addSymmetric(mass, i, i, 2);
    if (i === 0) continue;
    addSymmetric(stiffness, i, i, 5);
    addSymmetric(stiffness, i - 1, i - 1, 5);
    addSymmetric(stiffness, i, i - 1, -5);
  }
  const { values, vectors } = lowestModes(stiffness, mass, 4, 0.01);

  test('has the frequencies of its closed form, the rigid one among them', () => {
    // λ_k = (4k/m) sin²(kπ/2n) (derived).
    values.forEach((value, k) => {
      expect(value).toBeCloseTo(((4 * 5) / 2) * Math.sin((k * Math.PI) / (2 * n)) ** 2, 8);
    });
  });

  test('has modes of unit mass that satisfy K v = λ M v', () => {
    vectors.forEach((v, k) => {
      const kv = Float64Array.from(multiplySymmetric(stiffness, v, new Float64Array(n)));
      const mv = Float64Array.from(multiplySymmetric(mass, v, new Float64Array(n)));
      expect(v.reduce((sum, each, i) => sum + each * mv[i], 0)).toBeCloseTo(1, 9);
      for (let i = 0; i < n; i++) expect(kv[i]).toBeCloseTo(values[k] * mv[i], 5);
    });
  });

  test('with too low a shift is refused', () => {
    expect(() => lowestModes(stiffness, mass, 4, -1)).toThrow(/a shift over 0 is accepted/);
  });
});
