import type { Sentence } from '../language/index.ts';
import { LEAST_WIDTH_STATIONS, type Ski } from '../pair/index.ts';

/** What has to be known beside a radius: width stations too few to be used. Null where nothing has to. */
export function widthRemark({ unusedWidthStations: count = 0 }: Ski): Sentence | null {
  if (count === 0) return null;
  return { key: 'shape.note.unusedStations', values: { count, least: LEAST_WIDTH_STATIONS } };
}
