import { monotoneCubic } from '../numeric/index.ts';
import type { Ski } from '../pair/index.ts';
import type { Profile } from './profile.ts';

/**
 * Full width along the ski, m, for sharing out mass and cutting sections: measured stations where the file
 * gives them, else the parabola through tail, waist and tip (waist midway when its station is not given).
 * The radius cut into the ski is a question for shape, which fits the edge with more care.
 */
export function localWidth(ski: Ski): Profile {
  const { contactLength, tailWidth, waistWidth, tipWidth, widthStations } = ski;
  if (widthStations) {
    return monotoneCubic(
      widthStations.map(station => station.x),
      widthStations.map(station => station.width),
    );
  }
  const waist = ski.waistStation ?? contactLength / 2;
  const rear = (waistWidth - tailWidth) / waist;
  const fore = (tipWidth - waistWidth) / (contactLength - waist);
  const bend = (fore - rear) / contactLength;
  return at => {
    const x = Math.min(Math.max(at, 0), contactLength);
    return tailWidth + x * (rear + bend * (x - waist));
  };
}
