import { hermite, hermiteCurvature } from '../flex/index.ts';
import type { CarvingSki } from './groove.ts';
import type { SkiMesh } from './ski-mesh.ts';

/** Unknowns at a node: w, w' and φ, in this order. */
export const DOFS = 3;
/** Half bandwidth: an element couples two neighbouring nodes. */
export const HALF_BAND = 2 * DOFS - 1;
/** Entries in a stored row of the band; the diagonal sits at HALF_BAND. */
export const ROW = 2 * HALF_BAND + 1;
/** Entries an element in `SkiStiffness.elements`. */
const PARTS = 5;

const GAUSS_AT = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)];
const GAUSS_WEIGHT = [5 / 18, 8 / 18, 5 / 18];

/** What does not depend on the snow: elastic stiffness and the loads of camber and boot, rows by unknown. */
export interface SkiStiffness {
  /** Row-major band of bending (Hermite cubics) and twist (linear), `ROW` entries a row. */
  readonly band: Float64Array;
  /** The same by element, `PARTS` entries each: end moments by end angles (11, 12, 22), GJ/h, h. */
  readonly elements: Float64Array;
  /** Forces that would press a camber-free ski into its free camber. */
  readonly camberLoad: Float64Array;
  /** Generalised forces of a unit boot load centred on the boot, and of a unit boot moment (N·m). */
  readonly bootLoad: Float64Array;
  readonly bootMoment: Float64Array;
  /** One where the unknown is held at zero (twist under the sole, or everywhere when rigid in torsion). */
  readonly held: Uint8Array;
}

/** Assembles the elastic side of the ski; EI and GJ are integrated by three Gauss points an element. */
export function skiStiffness(ski: CarvingSki, mesh: SkiMesh): SkiStiffness {
  const { x, soleFirst, soleLast } = mesh;
  const unknowns = DOFS * x.length;
  const band = new Float64Array(unknowns * ROW);
  const elements = new Float64Array(PARTS * (x.length - 1));
  const camberLoad = new Float64Array(unknowns);
  const bootLoad = new Float64Array(unknowns);
  const bootMoment = new Float64Array(unknowns);
  const held = new Uint8Array(unknowns);
  const curvature = new Float64Array(4);
  const shape = new Float64Array(4);
  const add = (row: number, column: number, value: number) => {
    band[row * ROW + column - row + HALF_BAND] += value;
  };
  // Free camber as a parabola through the contact points, height h at the middle.
  const camberCurvature = (-8 * ski.camber) / (ski.edge.length * ski.edge.length);
  const sole = x[soleLast] - x[soleFirst];
  for (let element = 0; element + 1 < x.length; element++) {
    const h = x[element + 1] - x[element];
    const first = DOFS * element;
    const part = PARTS * element;
    elements[part + 4] = h;
    const bent = [first, first + 1, first + DOFS, first + DOFS + 1];
    for (let point = 0; point < 3; point++) {
      const at = x[element] + GAUSS_AT[point] * h;
      const weight = GAUSS_WEIGHT[point] * h;
      hermiteCurvature(GAUSS_AT[point], h, curvature);
      const stiffness = ski.bending(at) * weight;
      elements[part] += stiffness * curvature[1] * curvature[1];
      elements[part + 1] += stiffness * curvature[1] * curvature[3];
      elements[part + 2] += stiffness * curvature[3] * curvature[3];
      for (let i = 0; i < 4; i++) {
        camberLoad[bent[i]] += stiffness * curvature[i] * camberCurvature;
        for (let j = 0; j < 4; j++) add(bent[i], bent[j], stiffness * curvature[i] * curvature[j]);
      }
      if (ski.torsion) {
        const twist = (ski.torsion(at) * weight) / (h * h);
        elements[part + 3] += twist;
        add(first + 2, first + 2, twist);
        add(first + 2, first + DOFS + 2, -twist);
        add(first + DOFS + 2, first + 2, -twist);
        add(first + DOFS + 2, first + DOFS + 2, twist);
      }
      if (element >= soleFirst && element < soleLast) {
        hermite(GAUSS_AT[point], h, shape);
        // A bound sole carries a moment as a load that varies evenly from heel to toe.
        const lever = (12 * (at - (x[soleFirst] + sole / 2))) / (sole * sole);
        for (let i = 0; i < 4; i++) {
          bootLoad[bent[i]] += (weight * shape[i]) / sole;
          bootMoment[bent[i]] += (weight * shape[i] * lever) / sole;
        }
      }
    }
  }
  for (let node = 0; node < x.length; node++) {
    if (ski.torsion && (node < soleFirst || node > soleLast)) continue;
    const unknown = DOFS * node + 2;
    held[unknown] = 1;
    for (let other = Math.max(0, unknown - HALF_BAND); other <= unknown + HALF_BAND; other++) {
      if (other >= unknowns) break;
      band[unknown * ROW + other - unknown + HALF_BAND] = 0;
      band[other * ROW + unknown - other + HALF_BAND] = 0;
    }
    band[unknown * ROW + HALF_BAND] = 1;
  }
  return { band, elements, camberLoad, bootLoad, bootMoment, held };
}

/**
 * out = elastic forces at the unknowns `vector`, element by element. Each element turns against its own chord, so
 * that its shears cancel and balance its moments whatever rounding leaves of the heights: on elements a millimetre
 * long, rounding of a height of 0.1 m alone is worth more than 1e-8 of a light load.
 */
export function elasticForces(elements: Float64Array, vector: Float64Array, out: Float64Array): void {
  out.fill(0);
  let part = 0;
  for (let i = 0; i + DOFS < vector.length; i += DOFS) {
    const h = elements[part + 4];
    const chord = (vector[i + 3] - vector[i]) / h;
    const rear = vector[i + 1] - chord;
    const front = vector[i + 4] - chord;
    const rearMoment = elements[part] * rear + elements[part + 1] * front;
    const frontMoment = elements[part + 1] * rear + elements[part + 2] * front;
    const shear = (rearMoment + frontMoment) / h;
    const torque = elements[part + 3] * (vector[i + 5] - vector[i + 2]);
    out[i] += shear;
    out[i + 1] += rearMoment;
    out[i + 2] -= torque;
    out[i + 3] -= shear;
    out[i + 4] += frontMoment;
    out[i + 5] += torque;
    part += PARTS;
  }
}
