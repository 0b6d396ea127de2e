import type { Layup } from '../pair/index.ts';
import { layupPieces, type Piece } from './layup-pieces.ts';
import type { Profile } from './profile.ts';

/** What a cross-section made of layers amounts to, SI. */
export interface LayupSection {
  /** Height of the neutral axis over the base, m. */
  readonly neutralAxis: number;
  /** Height over the base of the plane about which the section twists, m. */
  readonly shearAxis: number;
  /** EI, N·m². */
  readonly bending: number;
  /** GJ, N·m². 4wD66 leaves out shear of the core: an upper bound. */
  readonly torsion: number;
  /** kg/m. */
  readonly massPerLength: number;
  /** m. */
  readonly thickness: number;
  readonly pieces: readonly Piece[];
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
 * counts by that share; edges and sidewalls count as strips of their own width in the same sums.
 */
export function layupSections(layup: Layup, width: Profile): (x: number) => LayupSection {
  const cut = layupPieces(layup, width);
  return x => sectionOf(cut(x));
}

function sectionOf(pieces: readonly Piece[]): LayupSection {
  let stretch = 0;
  let first = 0;
  let shearStretch = 0;
  let shearFirst = 0;
  let massPerLength = 0;
  let thickness = 0;
  for (const { width, low, high, youngs, shear, density } of pieces) {
    const area = width * (high - low);
    const middle = (low + high) / 2;
    stretch += youngs * area;
    first += youngs * area * middle;
    shearStretch += shear * area;
    shearFirst += shear * area * middle;
    massPerLength += density * area;
    thickness = Math.max(thickness, high);
  }
  const neutralAxis = first / stretch;
  const shearAxis = shearFirst / shearStretch;
  let bending = 0;
  let torsion = 0;
  for (const { width, low, high, youngs, shear } of pieces) {
    const thick = high - low;
    const arm = (low + high) / 2 - neutralAxis;
    bending += youngs * width * thick * (thick ** 2 / 12 + arm * arm);
    torsion += (4 * width * shear * ((high - shearAxis) ** 3 - (low - shearAxis) ** 3)) / 3;
  }
  return { neutralAxis, shearAxis, bending, torsion, massPerLength, thickness, pieces };
}
