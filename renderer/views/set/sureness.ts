import type { Ranking } from '../../../core/course/index.ts';
import { formatQuantity, type System } from '../../../core/units/index.ts';

/** Eight small changes are tried: four quantities, up and down. */
function tried(system: System): string {
  const aside = formatQuantity(0.3, 'radius', { system }).text;
  const speed = formatQuantity(5, 'speedKmh', { system }).text;
  return `gates ±${aside} across, ±${speed} at the start, ±${aside} on the radius of the first two pairs`;
}

/** How sure the pick is, in plain words. */
export function sureness(sure: Ranking['sure'], flips: number, system: System): string {
  switch (sure) {
    case 'only one pair':
      return 'Nothing to compare it with: choose a second pair.';
    case 'clear':
      return `Clear at this speed, which says nothing of time: it stays first under every small change tried (${tried(system)}).`;
    case 'close':
      return `Close: ${flips} of the small changes tried (${tried(system)}) put another pair first.`;
  }
}
