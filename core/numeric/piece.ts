/**
 * The piece of ascending `x` that holds `at`: the greatest i with x[i] ≤ at, so that x[i] ≤ at < x[i + 1]. The
 * first or the last piece for what lies outside; `x` needs two values or more.
 */
export function pieceAt(x: ArrayLike<number>, at: number): number {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle;
  }
  return low;
}
