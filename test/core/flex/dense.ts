import type { SymmetricBand } from '../../../core/numeric/index.ts';

/** A band written out in full, for comparison with a dense solver. */
export function denseRows({ size, half, data }: SymmetricBand): number[][] {
  const rows = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - half); j <= i; j++) {
      const value = data[i * (half + 1) + j - i + half];
      rows[i][j] = value;
      rows[j][i] = value;
    }
  }
  return rows;
}
