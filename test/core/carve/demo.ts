import type { CarvingSki } from '../../../core/carve/index.ts';
import type { EdgeCurve } from '../../../core/shape/index.ts';

export const radians = (degrees: number) => (degrees * Math.PI) / 180;
export const degrees = (angle: number) => (angle * 180) / Math.PI;
/** N/mm³ to N/m³. */
export const hardness = (newtonPerMm3: number) => newtonPerMm3 * 1e9;

/** A parabolic sidecut of radius R about mid-ski, with the tip wider than the tail by `taper` (full widths). */
export function parabolicEdge(length: number, radius: number, waist: number, taper = 0): EdgeCurve {
  const middle = length / 2;
  return {
    length,
    halfWidth: x => waist / 2 + (x - middle) ** 2 / (2 * radius) + ((taper / 2) * (x - middle)) / length,
    slope: x => (x - middle) / radius + taper / 2 / length,
    curvature: () => 1 / radius,
  };
}

/** Stiffness falling smoothly from the centre value to the end value. */
export const hump = (length: number, centre: number, end: number) => (x: number) =>
  end + (centre - end) * (1 - Math.abs((2 * x) / length - 1) ** 1.6);

/** An invented slalom ski. */
export const slalomSki: CarvingSki = {
  edge: parabolicEdge(1.4, 12.5, 0.066, 0.013),
  bending: hump(1.4, 330, 50),
  torsion: hump(1.4, 170, 30),
  camber: 0.007,
  bootCentre: 0.66,
  soleLength: 0.3,
};

/** An invented giant slalom ski: long, straight and stiff. */
export const giantSlalomSki: CarvingSki = {
  edge: parabolicEdge(1.66, 24.5, 0.066, 0.009),
  bending: hump(1.66, 470, 80),
  torsion: hump(1.66, 250, 45),
  camber: 0.006,
  bootCentre: 0.78,
  soleLength: 0.3,
};

export const rigidInTorsion = (ski: CarvingSki): CarvingSki => ({ ...ski, torsion: null });
