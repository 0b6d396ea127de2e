/**
 * Products of small dense row-major matrices that follow each other in larger arrays. Four terms are taken at a
 * time: a compiled loop spends its time on loads and stores, and this halves them.
 */

/** C += A B: A `rows` × `inner` from `a[atA]`, B `inner` × `columns` from `b[atB]`, C from `c[atC]`. */
export function addProduct(
  c: Float64Array,
  atC: number,
  a: Float64Array,
  atA: number,
  b: Float64Array,
  atB: number,
  rows: number,
  inner: number,
  columns: number,
): void {
  for (let i = 0; i < rows; i++) {
    const to = atC + i * columns;
    const from = atA + i * inner;
    let l = 0;
    for (; l + 4 <= inner; l += 4) {
      const f0 = a[from + l];
      const f1 = a[from + l + 1];
      const f2 = a[from + l + 2];
      const f3 = a[from + l + 3];
      if (f0 === 0 && f1 === 0 && f2 === 0 && f3 === 0) continue;
      const r0 = atB + l * columns;
      const r1 = r0 + columns;
      const r2 = r1 + columns;
      const r3 = r2 + columns;
      for (let j = 0; j < columns; j++) {
        c[to + j] += f0 * b[r0 + j] + f1 * b[r1 + j] + f2 * b[r2 + j] + f3 * b[r3 + j];
      }
    }
    for (; l < inner; l++) {
      const f = a[from + l];
      if (f === 0) continue;
      const row = atB + l * columns;
      for (let j = 0; j < columns; j++) c[to + j] += f * b[row + j];
    }
  }
}

/** The upper half of C += Aᵀ B, where it is known to be symmetric: A, B `inner` × `size`, C `size` × `size`. */
export function addSymmetricProduct(
  c: Float64Array,
  a: Float64Array,
  b: Float64Array,
  inner: number,
  size: number,
): void {
  let l = 0;
  for (; l + 4 <= inner; l += 4) {
    const r0 = l * size;
    const r1 = r0 + size;
    const r2 = r1 + size;
    const r3 = r2 + size;
    for (let i = 0; i < size; i++) {
      const f0 = a[r0 + i];
      const f1 = a[r1 + i];
      const f2 = a[r2 + i];
      const f3 = a[r3 + i];
      if (f0 === 0 && f1 === 0 && f2 === 0 && f3 === 0) continue;
      const to = i * size;
      for (let j = i; j < size; j++) {
        c[to + j] += f0 * b[r0 + j] + f1 * b[r1 + j] + f2 * b[r2 + j] + f3 * b[r3 + j];
      }
    }
  }
  for (; l < inner; l++) {
    const row = l * size;
    for (let i = 0; i < size; i++) {
      const f = a[row + i];
      if (f === 0) continue;
      const to = i * size;
      for (let j = i; j < size; j++) c[to + j] += f * b[row + j];
    }
  }
}
