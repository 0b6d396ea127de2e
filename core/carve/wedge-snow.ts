import type { SnowLaw } from './snow-law.ts';

/**
 * Virgin snow under an edge: force proportional to displaced volume (Mössner, Innerhofer, Schindelwig, Kaps,
 * Schretter, Nachbauer, Measurement of mechanical properties of snow for simulation of skiing, J. Glaciol.
 * 2013). Per length f = H_V·A with A the cross-section the base has pushed out of the snow: a triangle
 * e²/(2 tanθ) while part of the width is in, a trapezoid 2y cosθ·(e − y sinθ) once all of it is.
 *
 * The pressure grows with depth, so its resultant sits at the triangle's centroid, a third of the contact
 * width in from the edge: a thin wedge twists the ski with f·y, a flat ski not at all. A local angle below
 * zero (a soft tip twisted past flat) puts the far edge in deepest, which mirrors the whole section.
 */
export const wedgeSnow: SnowLaw = {
  remembers: true,
  evaluate(depth, halfWidth, edgeAngle, hardness, out) {
    const side = edgeAngle < 0 ? -1 : 1;
    const angle = side * edgeAngle;
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    const y = halfWidth;
    const sunk = side > 0 ? depth : depth + 2 * y * sin;
    if (sunk <= 0) {
      out.fill(0);
      return;
    }
    let area: number;
    let areaByDepth: number;
    let areaByAngle: number;
    let moment: number;
    let momentByDepth: number;
    let momentByAngle: number;
    if (sunk <= 2 * y * sin) {
      const inverse = 1 / sin;
      const width = sunk * inverse;
      area = 0.5 * sunk * width * cos;
      areaByDepth = width * cos;
      areaByAngle = -0.5 * width * width;
      moment = area * (y - width / 3);
      momentByDepth = areaByDepth * (y - 0.5 * width);
      momentByAngle = areaByAngle * y + (width * width * width * (1 + cos * cos)) / 6;
    } else {
      area = 2 * y * cos * (sunk - y * sin);
      areaByDepth = 2 * y * cos;
      areaByAngle = -2 * y * (sin * (sunk - y * sin) + y * cos * cos);
      moment = (2 / 3) * y * y * y * sin * cos;
      momentByDepth = 0;
      momentByAngle = (2 / 3) * y * y * y * (cos * cos - sin * sin);
    }
    if (side < 0) {
      // sunk depends on the angle here: d(sunk)/d(angle) = 2y cos, and d(angle)/d(edgeAngle) = −1.
      const sunkByAngle = 2 * y * cos;
      areaByAngle = -(areaByAngle + areaByDepth * sunkByAngle);
      momentByAngle = momentByAngle + momentByDepth * sunkByAngle;
      moment = -moment;
      momentByDepth = -momentByDepth;
    }
    out[0] = hardness * area;
    out[1] = hardness * areaByDepth;
    out[2] = hardness * areaByAngle;
    out[3] = hardness * moment;
    out[4] = hardness * momentByDepth;
    out[5] = hardness * momentByAngle;
  },
};

/** Depth (m) at which a thin wedge carries a line load (N/m) at an edge angle (rad) on a hardness (N/m³). */
export function wedgeDepth(lineLoad: number, edgeAngle: number, hardness: number): number {
  return Math.sqrt((2 * lineLoad * Math.tan(edgeAngle)) / hardness);
}

/**
 * Depth (m) at which the section carries a line load (N/m), the whole width counted once it is in;
 * half width in m, angle in rad (0 is flat), hardness in N/m³.
 */
export function sectionDepth(
  lineLoad: number,
  halfWidth: number,
  edgeAngle: number,
  hardness: number,
): number {
  const full = 2 * halfWidth * Math.sin(edgeAngle);
  const wedge = wedgeDepth(lineLoad, edgeAngle, hardness);
  if (wedge < full) return wedge;
  return lineLoad / (hardness * 2 * halfWidth * Math.cos(edgeAngle)) + 0.5 * full;
}
