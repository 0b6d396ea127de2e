/**
 * Where along a programme the nodes of the problem lie: at even times between the places where the edge angle is
 * not smooth.
 */

export interface RunMesh {
  /** In the measure the run is counted in, ascending from 0. */
  readonly nodes: Float64Array;
  /** Stages of each stretch between two marks: what a neighbouring run takes over to be of the same size. */
  readonly parts: readonly number[];
}

/** Marks closer than this share of a step are no nodes of their own. */
const CROWDED = 0.5;
/** A neighbour's numbers of stages are taken over while its step is within this factor of the one wished for. */
const ALIKE = 1.5;

/**
 * Nodes from 0 to `end`, about `step` seconds apart and on every one of `marks` that is not crowded.
 *
 * @param timeAt time (s) at a place in the measure of marks and end, ascending, and `placeAt` its inverse
 * @param like of a neighbouring run
 */
export function meshOver(
  marks: readonly number[],
  end: number,
  step: number,
  timeAt: (place: number) => number,
  placeAt: (time: number) => number,
  like?: readonly number[],
): RunMesh {
  const kept = [0];
  const last = timeAt(end);
  for (const at of [...new Set(marks)].sort((a, b) => a - b)) {
    const time = timeAt(at);
    if (!(at > 0 && at < end)) continue;
    if (time - timeAt(kept[kept.length - 1]) > CROWDED * step && last - time > CROWDED * step) kept.push(at);
  }
  kept.push(end);
  const wished = kept.slice(1).map((to, i) => {
    const seconds = timeAt(to) - timeAt(kept[i]);
    return Math.max(1, Math.ceil(seconds / step - 1e-6));
  });
  const alike =
    like !== undefined &&
    like.length === wished.length &&
    like.every((n, i) => n <= ALIKE * wished[i] + 1 && wished[i] <= ALIKE * n + 1);
  const parts = alike ? like : wished;
  const nodes = [0];
  for (let i = 0; i < parts.length; i++) {
    const from = timeAt(kept[i]);
    const to = timeAt(kept[i + 1]);
    for (let k = 1; k < parts[i]; k++) nodes.push(placeAt(from + ((to - from) * k) / parts[i]));
    nodes.push(kept[i + 1]);
  }
  return { nodes: Float64Array.from(nodes), parts };
}
