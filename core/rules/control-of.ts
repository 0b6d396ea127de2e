import type { ControlReading } from './control-radius.ts';

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
