import type { ControlReading } from '../../../core/rules/index.ts';
import { controlStations } from '../../../core/rules/index.ts';

/** A complete reading as a pair file states it, of a giant slalom ski near the limit; the front width tells. */
export const reading = (frontWidthMm: number) => ({
  developedLengthMm: 1930,
  tailToWaistMm: 860,
  frontWidthMm,
  rearWidthMm: 83,
  waistWidthMm: 65,
});

/** Its radius, m: 1630 mm between the stations, a spread of the widths in mm. */
export const radiusOf = (frontWidthMm: number) => 1630 ** 2 / (2000 * (frontWidthMm + 83 - 2 * 65));

/** The reading that a true arc of the given radius gives, m. */
export function arcReading(
  radius: number,
  developedLength: number,
  tailToWaist: number,
  waistWidth: number,
): ControlReading {
  const { front, rear } = controlStations(developedLength, tailToWaist);
  const widthAt = (fromTail: number): number => {
    const along = fromTail - tailToWaist;
    return waistWidth + 2 * (radius - Math.sqrt(radius * radius - along * along));
  };
  return { developedLength, tailToWaist, frontWidth: widthAt(front), rearWidth: widthAt(rear), waistWidth };
}
