/**
 * Moves labels apart so that neighbours keep `gap` between them and all stay in [low, high], each as near
 * to where it wants to be as that allows. Returns positions in the order of `wanted`.
 */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, at) => at).sort((a, b) => wanted[a]! - wanted[b]!);
  const placed = new Array<number>(wanted.length).fill(0);
  let floor = low;
  for (const at of order) {
    placed[at] = Math.max(wanted[at]!, floor);
    floor = placed[at]! + gap;
  }
  let roof = high;
  for (const at of order.reverse()) {
    placed[at] = Math.min(placed[at]!, roof);
    roof = placed[at]! - gap;
  }
  return placed;
}
