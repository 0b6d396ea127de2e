import { LEAST_WIDTH_STATIONS, type Ski } from '../pair/index.ts';

/** What has to be known beside a radius: width stations too few to be used. Null where nothing has to. */
export function widthRemark({ unusedWidthStations: given = 0 }: Ski): string | null {
  if (given === 0) return null;
  const stations = given === 1 ? 'The one width station given is' : `The ${given} width stations given are`;
  return `${stations} not used: the three widths are. Stations count from ${LEAST_WIDTH_STATIONS} on.`;
}
