import { factorSymmetric, multiplySymmetric, type SymmetricBand, solveSymmetric } from './symmetric-band.ts';

export interface EigenPairs {
  /** Ascending λ of K v = λ M v. */
  readonly values: Float64Array;
  /** One vector a value, scaled to vᵀMv = 1. */
  readonly vectors: readonly Float64Array[];
}

/**
 * The `count` lowest modes of K v = λ M v, both banded and symmetric, M positive definite, K at least
 * semi-definite. Subspace iteration on K + shift·M (Bathe, Finite Element Procedures), so that a free ski's
 * rigid motions (λ = 0) are no obstacle; `shift` > 0 should lie under the first wanted λ.
 */
export function lowestModes(
  stiffness: SymmetricBand,
  mass: SymmetricBand,
  count: number,
  shift: number,
): EigenPairs {
  const n = stiffness.size;
  const width = Math.min(n, Math.max(2 * count, count + 8));
  const factored = { ...stiffness, data: Float64Array.from(stiffness.data) };
  // The mass band may be no wider than the stiffness band; both come from the same elements.
  for (let k = 0; k < factored.data.length; k++) factored.data[k] += shift * mass.data[k];
  if (factorSymmetric(factored) !== 0) {
    throw new RangeError('stiffness: not positive definite with this shift; a shift over 0 is accepted');
  }
  let basis = Array.from({ length: width }, (_, k) => startVector(n, k));
  let values = new Float64Array(width);
  const scratch = new Float64Array(n);
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 200; round++) {
    const images = basis.map(v =>
      solveSymmetric(factored, Float64Array.from(multiplySymmetric(mass, v, scratch))),
    );
    orthonormalise(images, mass, scratch);
    const reduced = images.map(() => new Float64Array(width));
    images.forEach((v, i) => {
      const kv = multiplySymmetric(stiffness, v, scratch);
      for (let j = 0; j <= i; j++) {
        reduced[i][j] = dot(images[j], kv);
        reduced[j][i] = reduced[i][j];
      }
    });
    const { values: ritz, vectors } = symmetricEigen(reduced);
    basis = vectors.map(weights => combine(images, weights));
    let change = 0;
    for (let k = 0; k < count; k++) {
      change = Math.max(change, Math.abs(ritz[k] - values[k]) / (Math.abs(ritz[k]) + shift));
    }
    values = ritz;
    // Near 1e-8 the cancelling terms of a slender beam's stiffness leave rounding only: no more to gain.
    if (change < 1e-9 || (change < 1e-6 && change >= before)) break;
    before = change;
  }
  return { values: values.slice(0, count), vectors: basis.slice(0, count) };
}

/** Cosines of rising wave number excite every mode; their irrational spacing keeps them independent. */
function startVector(n: number, k: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => Math.cos((k + 0.37) * Math.PI * (i / n + 0.011 * k)));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function combine(vectors: readonly Float64Array[], weights: Float64Array): Float64Array {
  const out = new Float64Array(vectors[0].length);
  vectors.forEach((v, k) => {
    const w = weights[k];
    for (let i = 0; i < out.length; i++) out[i] += w * v[i];
  });
  return out;
}

/** Modified Gram–Schmidt in the mass inner product, twice for full precision. */
function orthonormalise(vectors: readonly Float64Array[], mass: SymmetricBand, scratch: Float64Array): void {
  const weighted: Float64Array[] = [];
  vectors.forEach((v, k) => {
    for (let pass = 0; pass < 2; pass++) {
      for (let j = 0; j < k; j++) {
        const share = dot(weighted[j], v);
        for (let i = 0; i < v.length; i++) v[i] -= share * vectors[j][i];
      }
      const size = 1 / Math.sqrt(dot(v, multiplySymmetric(mass, v, scratch)));
      for (let i = 0; i < v.length; i++) v[i] *= size;
    }
    weighted.push(Float64Array.from(multiplySymmetric(mass, v, scratch)));
  });
}

/** Cyclic Jacobi rotations on a small dense symmetric matrix; ascending values, one vector each. */
export function symmetricEigen(matrix: readonly Float64Array[]): {
  values: Float64Array<ArrayBuffer>;
  vectors: Float64Array[];
} {
  const n = matrix.length;
  const a = matrix.map(row => Float64Array.from(row));
  const v = Array.from({ length: n }, (_, i) =>
    Float64Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)),
  );
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let all = 0;
    for (let p = 0; p < n; p++) {
      all += a[p][p] ** 2;
      for (let q = 0; q < p; q++) off += 2 * a[p][q] ** 2;
    }
    if (off <= 1e-30 * (all + off)) break;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) {
        if (a[p][q] === 0) continue;
        const ratio = (a[q][q] - a[p][p]) / (2 * a[p][q]);
        const t = (ratio < 0 ? -1 : 1) / (Math.abs(ratio) + Math.hypot(ratio, 1));
        const c = 1 / Math.hypot(t, 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const kp = a[k][p];
          const kq = a[k][q];
          a[k][p] = c * kp - s * kq;
          a[k][q] = s * kp + c * kq;
        }
        for (let k = 0; k < n; k++) {
          const pk = a[p][k];
          const qk = a[q][k];
          a[p][k] = c * pk - s * qk;
          a[q][k] = s * pk + c * qk;
          const vp = v[p][k];
          const vq = v[q][k];
          v[p][k] = c * vp - s * vq;
          v[q][k] = s * vp + c * vq;
        }
      }
    }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => a[i][i] - a[j][j]);
  return { values: Float64Array.from(order, i => a[i][i]), vectors: order.map(i => v[i]) };
}
