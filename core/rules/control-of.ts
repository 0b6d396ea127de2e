import { type ControlReading, controlStations } from './control-radius.ts';

/** A control measurement as a pair file states it, mm; any reading may still be missing. */
export interface StatedControl {
  readonly developedLengthMm?: number | undefined;
  readonly tailToWaistMm?: number | undefined;
  readonly frontWidthMm?: number | undefined;
  readonly rearWidthMm?: number | undefined;
  readonly waistWidthMm?: number | undefined;
}

/** The complete reading in metres; null while one of the five is missing. */
export function controlOf(stated: StatedControl | undefined): ControlReading | null {
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

/** The five readings in the order they are taken: both lengths first, since they say where the widths are read. */
export const controlReadings = [
  { field: 'developedLengthMm', symbol: 'L_TOT', meaning: 'developed length' },
  { field: 'tailToWaistMm', symbol: 'L_W', meaning: 'tail to the narrowest point' },
  { field: 'frontWidthMm', symbol: 'S', meaning: 'width at 80 % of the front part' },
  { field: 'rearWidthMm', symbol: 'H', meaning: 'width at 90 % of the rear part' },
  { field: 'waistWidthMm', symbol: 'W', meaning: 'width at the narrowest point' },
] as const satisfies readonly { field: keyof StatedControl; symbol: string; meaning: string }[];

/** Readings that are still missing; empty when the measurement is complete. */
export const missingReadings = (stated: StatedControl | undefined): (typeof controlReadings)[number][] =>
  controlReadings.filter(({ field }) => stated?.[field] === undefined);

/** Where the caliper goes, mm from the tail, and how far apart; null until both lengths are known. */
export function statedStations(
  stated: StatedControl | undefined,
): { readonly frontMm: number; readonly rearMm: number; readonly distanceMm: number } | null {
  const { developedLengthMm, tailToWaistMm } = stated ?? {};
  if (developedLengthMm === undefined || tailToWaistMm === undefined) return null;
  if (!(tailToWaistMm > 0 && tailToWaistMm < developedLengthMm)) return null;
  const { front, rear, distance } = controlStations(developedLengthMm / 1000, tailToWaistMm / 1000);
  return { frontMm: front * 1000, rearMm: rear * 1000, distanceMm: distance * 1000 };
}
