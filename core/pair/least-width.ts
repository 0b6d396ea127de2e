import { LEAST_WIDTH_STATIONS, type Pair } from './pair-schema.ts';

/**
 * Full width of a ski where it is narrowest, mm: the least of its width stations where they are used, else of
 * the parabola through the three widths, which dips below the stated waist when that was measured off centre.
 */
export function leastWidthMm(pair: Pair): number {
  const { tailWidthMm: tail, waistWidthMm: waist, tipWidthMm: tip, widthStations: stations = [] } = pair;
  if (stations.length >= LEAST_WIDTH_STATIONS) return Math.min(...stations.map(station => station.widthMm));
  const s = pair.waistFromTailMm === undefined ? 0.5 : pair.waistFromTailMm / pair.contactLengthMm;
  const c = (tail + (tip - tail) * s - waist) / (s * (1 - s));
  const b = tip - tail - c;
  return tail - (b * b) / (4 * c);
}
