/**
 * The radius as an equipment controller reads it: the ski's developed length L_TOT to 1 mm, the narrowest
 * point L_W from the tail, the front width S at 80 % of the part ahead of it and the rear width H at 90 % of
 * the part behind it, widths rounded to 0.1 mm, L = 0.8 (L_TOT − L_W) + 0.9 L_W, R = L²/(8 d) with
 * d = (S + H − 2W)/4.
 *
 * International federation equipment specification, procedure as reported [seen in part; confirm in the
 * specification's annex]. Lengths here in metres.
 */

import { accept, FieldError } from '../fault/index.ts';

export interface ControlStations {
  /** Where S is read, m from the tail. */
  readonly front: number;
  /** Where H is read, m from the tail. */
  readonly rear: number;
  /** L, the distance between the two, m. */
  readonly distance: number;
}

export interface ControlReading {
  /** L_TOT, m. */
  readonly developedLength: number;
  /** L_W, from the tail to the narrowest point, m. */
  readonly tailToWaist: number;
  /** S, m. */
  readonly frontWidth: number;
  /** H, m. */
  readonly rearWidth: number;
  /** W, m. */
  readonly waistWidth: number;
}

export interface ControlResult {
  readonly verdict: 'accepted' | 'refused' | 'two more readings needed';
  /** One radius a reading, m. */
  readonly radii: readonly number[];
  /** What was compared with the limit, m: the first reading, or 1.015 times the mean of three. */
  readonly compared: number;
}

/** The allowance on the mean of three readings, as reported [seen in part]. */
export const threeReadingAllowance = 1.015;

/** Where the controller measures. `RangeError` when the narrowest point is not on the ski. */
export function controlStations(developedLength: number, tailToWaist: number): ControlStations {
  accept('tailToWaist', tailToWaist, { above: 0, below: developedLength, quantity: 'station' });
  const front = tailToWaist + 0.8 * (developedLength - tailToWaist);
  const rear = 0.1 * tailToWaist;
  return { front, rear, distance: front - rear };
}

/** R = L²/(2 (S + H − 2W)), all in metres; infinite for a ski without sidecut. */
export function rulebookRadius(distance: number, front: number, rear: number, waist: number): number {
  const spread = front + rear - 2 * waist;
  return spread > 0 ? (distance * distance) / (2 * spread) : Number.POSITIVE_INFINITY;
}

/** A reading as the procedure has it written down: lengths to 1 mm, widths to 0.1 mm. */
export function roundedReading(reading: ControlReading): ControlReading {
  return {
    developedLength: roundTo(reading.developedLength, 1e-3),
    tailToWaist: roundTo(reading.tailToWaist, 1e-3),
    frontWidth: roundTo(reading.frontWidth, 1e-4),
    rearWidth: roundTo(reading.rearWidth, 1e-4),
    waistWidth: roundTo(reading.waistWidth, 1e-4),
  };
}

/** The radius of one reading, rounded as the procedure asks, m. `RangeError` as for `controlStations`. */
export function controlRadius(reading: ControlReading): number {
  const { developedLength, tailToWaist, frontWidth, rearWidth, waistWidth } = roundedReading(reading);
  const { distance } = controlStations(developedLength, tailToWaist);
  return rulebookRadius(distance, frontWidth, rearWidth, waistWidth);
}

/** One reading at or over the limit is accepted; else three are averaged and 1.015 × mean is compared. */
export function controlVerdict(readings: readonly ControlReading[], limit: number): ControlResult {
  if (readings.length !== 1 && readings.length !== 3) {
    throw new FieldError({ field: 'readings', found: readings.length, accepted: { oneOf: [1, 3] } });
  }
  const radii = readings.map(controlRadius);
  if (radii[0] >= limit) return { verdict: 'accepted', radii, compared: radii[0] };
  if (radii.length === 1) return { verdict: 'two more readings needed', radii, compared: radii[0] };
  const compared = (threeReadingAllowance * (radii[0] + radii[1] + radii[2])) / 3;
  return { verdict: compared >= limit ? 'accepted' : 'refused', radii, compared };
}

/** Half a step up, as a controller rounds; the small allowance keeps 0.09045 m from reading as 90.4 mm. */
function roundTo(value: number, step: number): number {
  return Math.floor(value / step + 0.5 + 1e-9) * step;
}
