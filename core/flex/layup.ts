import { monotoneCubic } from '../numeric/index.ts';
import type { Layup } from '../pair/index.ts';
import type { Profile } from './profile.ts';

/** What a cross-section made of layers amounts to, SI. */
export interface LayupSection {
  /** Height of the neutral axis over the base, m. */
  readonly neutralAxis: number;
  /** EI, N·m². */
  readonly bending: number;
  /** GJ, N·m². 4wD66 leaves out shear of the core: an upper bound. */
  readonly torsion: number;
  /** kg/m. */
  readonly massPerLength: number;
  /** m. */
  readonly thickness: number;
}

/** The layup cut at `x` (m from the rear contact point) where the ski is `width` m wide. */
export function layupSection(layup: Layup, width: number, x: number): LayupSection {
  return layupSections(layup, () => width)(x);
}

/**
 * Sections along the ski, with thickness stations interpolated once.
 * EI = Σ Eᵢ(Iᵢ + Aᵢ(zᵢ − z̄)²), the transformed section about its neutral axis z̄ = ΣEᵢAᵢzᵢ/ΣEᵢAᵢ (any
 * handbook of strength of materials). GJ = 4 w D66, D66 = ΣGᵢ(zᵢ³ − zᵢ₋₁³)/3 (classical laminate theory, strip
 * much wider than thick) about the plane where twist brings no in-plane shear: mid-plane when the layers are
 * symmetric, else D66 − B66²/A66, since nothing holds the strip in plane. A layer covering a share of the width
 * counts by that share.
 */
export function layupSections(layup: Layup, width: Profile): (x: number) => LayupSection {
  const { layers } = layup;
  const thicknessOf = layers.map(({ thickness }) => {
    if (typeof thickness === 'number') return () => thickness;
    return monotoneCubic(
      thickness.map(station => station.x),
      thickness.map(station => station.thickness),
    );
  });
  return x => {
    const w = width(x);
    const thick = thicknessOf.map(at => at(x));
    const total = thick.reduce((sum, t) => sum + t, 0);
    let stretch = 0;
    let first = 0;
    let shearStretch = 0;
    let shearFirst = 0;
    let mass = 0;
    let bottom = 0;
    for (let i = 0; i < layers.length; i++) {
      const area = w * layers[i].widthShare * thick[i];
      stretch += layers[i].youngs * area;
      first += layers[i].youngs * area * (bottom + thick[i] / 2);
      shearStretch += layers[i].shear * area;
      shearFirst += layers[i].shear * area * (bottom + thick[i] / 2);
      mass += layers[i].density * area;
      bottom += thick[i];
    }
    const neutralAxis = first / stretch;
    const shearAxis = shearFirst / shearStretch;
    let bending = 0;
    let torsion = 0;
    bottom = 0;
    for (let i = 0; i < layers.length; i++) {
      const { youngs, shear, widthShare } = layers[i];
      const area = w * widthShare * thick[i];
      const arm = bottom + thick[i] / 2 - neutralAxis;
      bending += youngs * area * (thick[i] ** 2 / 12 + arm * arm);
      const low = bottom - shearAxis;
      torsion += (4 * w * widthShare * shear * ((low + thick[i]) ** 3 - low ** 3)) / 3;
      bottom += thick[i];
    }
    return { neutralAxis, bending, torsion, massPerLength: mass, thickness: total };
  };
}
