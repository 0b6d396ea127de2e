import type { Sentence } from '../language/index.ts';
import { type ControlReading, controlStations } from './control-radius.ts';

/** One reading as a pair file states it, mm; any of its five measurements may still be missing. */
export interface StatedReading {
  readonly developedLengthMm?: number | undefined;
  readonly tailToWaistMm?: number | undefined;
  readonly frontWidthMm?: number | undefined;
  readonly rearWidthMm?: number | undefined;
  readonly waistWidthMm?: number | undefined;
}

/** A control measurement as a pair file states it: the first reading, and the two that may follow it. */
export interface StatedControl extends StatedReading {
  readonly repeats?: readonly StatedReading[] | undefined;
}

/** The complete reading in metres; null while one of the five is missing. */
export function controlOf(stated: StatedReading | undefined): ControlReading | null {
  const { developedLengthMm, tailToWaistMm, frontWidthMm, rearWidthMm, waistWidthMm } = stated ?? {};
  if (
    developedLengthMm === undefined ||
    tailToWaistMm === undefined ||
    frontWidthMm === undefined ||
    rearWidthMm === undefined ||
    waistWidthMm === undefined
  ) {
    return null;
  }
  return {
    developedLength: developedLengthMm / 1000,
    tailToWaist: tailToWaistMm / 1000,
    frontWidth: frontWidthMm / 1000,
    rearWidth: rearWidthMm / 1000,
    waistWidth: waistWidthMm / 1000,
  };
}

/** The reading of a number: 0 is the first one, 1 and 2 those that follow it; undefined when it is not begun. */
export const statedReading = (stated: StatedControl | undefined, nth: number): StatedReading | undefined =>
  nth === 0 ? stated : stated?.repeats?.[nth - 1];

/** The complete readings from the first on, m: three, two, one or none; one that is not finished ends the row. */
export function controlReadingsOf(stated: StatedControl | undefined): readonly ControlReading[] {
  const readings: ControlReading[] = [];
  for (let nth = 0; nth < 3; nth++) {
    const reading = controlOf(statedReading(stated, nth));
    if (reading === null) break;
    readings.push(reading);
  }
  return readings;
}

/** The five measurements of a reading in the order they are taken: both lengths first, since they say where the widths are read. */
export const controlReadings = [
  { field: 'developedLengthMm', symbol: 'L_TOT', meaning: { key: 'rules.reading.developedLength' } },
  { field: 'tailToWaistMm', symbol: 'L_W', meaning: { key: 'rules.reading.tailToWaist' } },
  { field: 'frontWidthMm', symbol: 'S', meaning: { key: 'rules.reading.frontWidth' } },
  { field: 'rearWidthMm', symbol: 'H', meaning: { key: 'rules.reading.rearWidth' } },
  { field: 'waistWidthMm', symbol: 'W', meaning: { key: 'rules.reading.waistWidth' } },
] as const satisfies readonly { field: keyof StatedReading; symbol: string; meaning: Sentence }[];

/** Measurements a reading still lacks; empty when it is complete. */
export const missingReadings = (stated: StatedReading | undefined): (typeof controlReadings)[number][] =>
  controlReadings.filter(({ field }) => stated?.[field] === undefined);

/** Where the caliper goes, mm from the tail, and how far apart; null until both lengths are known. */
export function statedStations(
  stated: StatedReading | undefined,
): { readonly frontMm: number; readonly rearMm: number; readonly distanceMm: number } | null {
  const { developedLengthMm, tailToWaistMm } = stated ?? {};
  if (developedLengthMm === undefined || tailToWaistMm === undefined) return null;
  if (!(tailToWaistMm > 0 && tailToWaistMm < developedLengthMm)) return null;
  const { front, rear, distance } = controlStations(developedLengthMm / 1000, tailToWaistMm / 1000);
  return { frontMm: front * 1000, rearMm: rear * 1000, distanceMm: distance * 1000 };
}
