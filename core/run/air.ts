/**
 * Air density and drag area.
 * Density: International Standard Atmosphere, troposphere (from memory). Drag areas: tuck 0.23 ± 0.03 and
 * upright 0.66 ± 0.09 m², Appl. Sci. 2022, 12, 902 (seen); the race stance between them is a placeholder.
 */

import { accept } from '../fault/index.ts';

const SEA_LEVEL_DENSITY = 1.225;
const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = 0.0065;
/** g M/(R* L) of the standard atmosphere. */
const PRESSURE_EXPONENT = 5.25588;

/**
 * Air density, kg/m³, at `altitude` metres above the sea in the standard atmosphere.
 *
 * @throws FieldError outside −500 to 11 000 m, where the formula ends
 */
export function airDensity(altitude: number): number {
  accept('altitude', altitude, { from: -500, to: 11_000, unit: 'm' });
  const ratio = 1 - (LAPSE_RATE * altitude) / SEA_LEVEL_TEMPERATURE;
  return SEA_LEVEL_DENSITY * ratio ** (PRESSURE_EXPONENT - 1);
}

export type Posture = 'tuck' | 'race stance' | 'upright';

/** Drag area C_dA, m². */
export const DRAG_AREA: Readonly<Record<Posture, number>> = {
  tuck: 0.23,
  'race stance': 0.45,
  upright: 0.66,
};
