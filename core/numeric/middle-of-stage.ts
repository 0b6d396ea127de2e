/** A pivot of 1 − h/2 f_x under this counts as none: the step is too long for the stage. */
const LEAST_PIVOT = 1e-12;

/**
 * D = [E⁻¹, h/2 E⁻¹ f_u], E = 1 − h/2 f_x: the change in the middle of a stage by those of its first state and its
 * control. Gauss–Jordan with row exchanges on [E | 1, h/2 f_u].
 * @param to D, row-major n × z
 * @param slopes [f_x, f_u] from `at` on, row-major n × z
 * @param half h/2
 * @param work n × n
 * @returns false when E is singular
 */
export function middleOfStage(
  to: Float64Array,
  slopes: Float64Array,
  at: number,
  half: number,
  n: number,
  z: number,
  work: Float64Array,
): boolean {
  for (let i = 0; i < n; i++) {
    const row = i * z;
    for (let j = 0; j < n; j++) {
      work[i * n + j] = (i === j ? 1 : 0) - half * slopes[at + row + j];
      to[row + j] = i === j ? 1 : 0;
    }
    for (let j = n; j < z; j++) to[row + j] = half * slopes[at + row + j];
  }
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let i = c + 1; i < n; i++) if (Math.abs(work[i * n + c]) > Math.abs(work[best * n + c])) best = i;
    const pivot = work[best * n + c];
    if (!(Math.abs(pivot) > LEAST_PIVOT)) return false;
    if (best !== c) {
      for (let j = c; j < n; j++) exchange(work, c * n + j, best * n + j);
      for (let j = 0; j < z; j++) exchange(to, c * z + j, best * z + j);
    }
    const inverse = 1 / pivot;
    const by = c * z;
    for (let j = c; j < n; j++) work[c * n + j] *= inverse;
    for (let j = 0; j < z; j++) to[by + j] *= inverse;
    for (let i = 0; i < n; i++) {
      if (i === c) continue;
      const s = work[i * n + c];
      if (s === 0) continue;
      const row = i * z;
      for (let j = c; j < n; j++) work[i * n + j] -= s * work[c * n + j];
      for (let j = 0; j < z; j++) to[row + j] -= s * to[by + j];
    }
  }
  return true;
}

function exchange(x: Float64Array, i: number, j: number): void {
  const held = x[i];
  x[i] = x[j];
  x[j] = held;
}
