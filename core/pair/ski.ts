/**
 * One ski of a pair in SI units with every default filled in: what the physics rooms work on.
 * Lengths in metres from the rear contact point (x = 0) to the front contact point (x = contactLength).
 */
export interface Ski {
  readonly name: string;
  readonly discipline: 'SL' | 'GS' | 'SG' | 'DH' | 'other';
  /** Overall length, m. */
  readonly length: number;
  /** L, m. */
  readonly contactLength: number;
  /** Full widths, m. */
  readonly tipWidth: number;
  readonly waistWidth: number;
  readonly tailWidth: number;
  /** Measured waist station, m from the rear contact point; null when the file gives none. */
  readonly waistStation: number | null;
  /** Measured full widths along the edge, ascending in x; null when fewer than five are given. */
  readonly widthStations: readonly { readonly x: number; readonly width: number }[] | null;
  /** How many width stations the file gives where they are too few to be used; absent or 0 otherwise. */
  readonly unusedWidthStations?: number;
  /** Free camber height, m. */
  readonly camber: number;
  /** Boot centre, m from the rear contact point. */
  readonly bootCentre: number;
  /** Boot sole length over which the boot loads and clamps the ski, m. */
  readonly soleLength: number;
  /** Mass of one ski, kg; null when not given. */
  readonly mass: number | null;
  readonly bending: Stiffness | null;
  /** null means rigid in torsion. */
  readonly torsion: Stiffness | null;
  /** Plate under the binding; absent when the ski has none. */
  readonly plate?: Plate;
  /** EI that the boot in its binding adds over the sole, N·m²; absent when it adds none. */
  readonly soleBending?: number;
  /** Snow to the underside of the boot sole, m. */
  readonly standingHeight: number;
  /** Underside of the sole to the foot bed, m. */
  readonly bootSoleHeight: number;
  /** The file states both; else what it leaves out is the usual height. */
  readonly heightsStated: boolean;
  /** Base bevel, rad. */
  readonly baseBevel: number;
  /** Side-edge angle, rad. */
  readonly sideAngle: number;
}

/** What a plate adds to the bare ski over its length, SI. */
export interface Plate {
  /** Ends, m from the rear contact point. */
  readonly from: number;
  readonly to: number;
  /** EI and GJ added between them, N·m². */
  readonly bending: number;
  readonly torsion: number;
}

/** A stiffness along the ski, EI or GJ in N·m², as the file states it (stations already in metres). */
export type Stiffness =
  | { readonly kind: 'uniform'; readonly newtonM2: number }
  | {
      readonly kind: 'stations';
      readonly stations: readonly { readonly x: number; readonly newtonM2: number }[];
    }
  | { readonly kind: 'formula'; readonly newtonM2: string }
  | { readonly kind: 'layup'; readonly layup: Layup };

/**
 * Layers from base to topsheet, with what the sides are made of; absent sides are none, and the layers reach
 * to the side.
 */
export interface Layup {
  readonly layers: readonly LayupLayer[];
  /** Steel edges from the base up to `height` (m). */
  readonly edges?: SideStrip & { readonly height: number };
  /** Sidewalls from the top of the steel edges, or from the base, to the top of the layers. */
  readonly sidewalls?: SideStrip;
}

/** A strip along either side of the ski, SI; both sides alike. */
export interface SideStrip {
  /** Of one side, m. */
  readonly width: number;
  /** Pa. */
  readonly youngs: number;
  readonly shear: number;
  /** kg/m³. */
  readonly density: number;
}

export interface LayupLayer {
  readonly material: string;
  /** Young's modulus and shear modulus, Pa; density, kg/m³. */
  readonly youngs: number;
  readonly shear: number;
  readonly density: number;
  /** Layer thickness, m: one value for the whole ski, or stations (monotone cubic between). */
  readonly thickness: number | readonly { readonly x: number; readonly thickness: number }[];
  /** Width as a share of the local ski width, 0–1 (1 when absent in the file). */
  readonly widthShare: number;
}
