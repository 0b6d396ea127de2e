import type { Ranking } from '../../../core/course/index.ts';

/** Eight small changes are tried: four quantities, up and down. */
const TRIED = 'gates ±0.3 m across, ±5 km/h at the start, ±0.3 m on the radius of the first two pairs';

/** How sure the pick is, in plain words. */
export function sureness(sure: Ranking['sure'], flips: number): string {
  switch (sure) {
    case 'only one pair':
      return 'Nothing to compare it with: choose a second pair.';
    case 'clear':
      return `Clear: it stays first under every small change tried (${TRIED}).`;
    case 'close':
      return `Close: ${flips} of the small changes tried (${TRIED}) put another pair first.`;
  }
}
