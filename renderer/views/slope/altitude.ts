import { airDensity } from '../../../core/run/index.ts';

const HIGHEST = 9000;

/** The altitude whose standard air has this density, m; held to 0–9000. */
export function altitudeOf(density: number): number {
  let low = 0;
  let high = HIGHEST;
  if (density >= airDensity(low)) return low;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (airDensity(middle) > density) low = middle;
    else high = middle;
  }
  return Math.round((low + high) / 2);
}
