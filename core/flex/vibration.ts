import { accept } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import {
  addSymmetric,
  gaussLegendre,
  lowestModes,
  prescribe,
  type SymmetricBand,
  symmetricBand,
} from '../numeric/index.ts';
import { BENDING_HALF, bendingMatrix, DEFAULT_ELEMENTS, gaussValues, hermite, meshThrough } from './beam.ts';
import type { EndPiece, EndPieces } from './overhang.ts';
import type { Profile } from './profile.ts';
import { type ClampedSki, soleSpan } from './springs.ts';

/** One natural mode. */
export interface Mode {
  readonly hz: number;
  /** The length that swings: the whole ski, or what is before or behind a boot that is held. */
  readonly part: 'whole' | 'forebody' | 'afterbody';
  readonly motion: 'bending' | 'torsion';
  /** 1 for the lowest of its part and motion. */
  readonly order: number;
  /** As documents name it: `bending 1`, `torsion 2`, `forebody bending 1`. `modeName` says it to a person. */
  readonly kind: string;
  readonly x: Float64Array;
  /** Deflection (bending) or twist (torsion) at the nodes, greatest 1. */
  readonly shape: Float64Array;
}

export interface VibratingSki extends ClampedSki {
  /** EI(x), N·m². */
  readonly bending: Profile;
  /** GJ(x), N·m²; null leaves torsion out. */
  readonly torsion: Profile | null;
  /** kg/m. */
  readonly massPerLength: Profile;
  /** Full width, m: the strip's polar inertia is mass a length × width²/12. */
  readonly width: Profile;
  /** What lies beyond the contact points and swings with them; absent for a bare beam. */
  readonly ends?: EndPieces;
}

export interface VibrationOptions {
  /** Held over the boot sole, in the manner of a clamped-ski test; free-free otherwise. */
  readonly clamped?: boolean;
  /** How many modes to give, lowest first. */
  readonly modes?: number;
  readonly elements?: number;
}

/** Natural modes from consistent stiffness and mass matrices, lowest first; a free ski's rigid motions left out. */
export function vibrate(ski: VibratingSki, options: VibrationOptions = {}): Mode[] {
  const { clamped = false, modes = 6, elements = DEFAULT_ELEMENTS } = options;
  accept('modes', modes, { from: 1, to: 20, whole: true });
  const found: Mode[] = [];
  const part = (from: number, to: number, held: 'none' | 'from' | 'to', of: Mode['part']) => {
    const share = Math.max(20, Math.round((elements * (to - from)) / ski.length));
    const x = meshThrough(from, to, [], share);
    found.push(...bendingModes(ski, x, held, modes, of));
    if (ski.torsion) found.push(...torsionModes(ski, ski.torsion, x, held, modes, of));
  };
  if (clamped) {
    const [rear, front] = soleSpan(ski);
    part(0, rear, 'to', 'afterbody');
    part(front, ski.length, 'from', 'forebody');
  } else part(0, ski.length, 'none', 'whole');
  return found.sort((a, b) => a.hz - b.hz).slice(0, modes);
}

/** What a mode is called. */
export const modeName = ({ part, motion, order }: Pick<Mode, 'part' | 'motion' | 'order'>): Sentence => ({
  key: 'flex.mode',
  values: { what: part === 'whole' ? motion : `${part}${motion}`, order },
});

/** Consistent mass of the Hermite beam: ∫ μ NᵀN dx, four Gauss points an element (exact for even μ). */
export function massMatrix(x: Float64Array, massPerLength: Profile): SymmetricBand {
  const band = symmetricBand(2 * x.length, BENDING_HALF);
  const { nodes, weights } = gaussLegendre(4);
  const shape = new Float64Array(4);
  for (let e = 0; e + 1 < x.length; e++) {
    const h = x[e + 1] - x[e];
    for (let q = 0; q < 4; q++) {
      const t = (1 + nodes[q]) / 2;
      const share = massPerLength(x[e] + t * h) * ((weights[q] * h) / 2);
      hermite(t, h, shape);
      for (let i = 0; i < 4; i++) {
        for (let j = 0; j <= i; j++) addSymmetric(band, 2 * e + i, 2 * e + j, share * shape[i] * shape[j]);
      }
    }
  }
  return band;
}

type Held = 'none' | 'from' | 'to';

function bendingModes(
  ski: VibratingSki,
  x: Float64Array,
  held: Held,
  count: number,
  part: Mode['part'],
): Mode[] {
  const stiffness = bendingMatrix(x, gaussValues(ski.bending, x));
  const mass = massMatrix(x, ski.massPerLength);
  const last = x.length - 1;
  if (ski.ends && held !== 'from') carry(mass, 0, ski.ends.rear, -1);
  if (ski.ends && held !== 'to') carry(mass, 2 * last, ski.ends.front, 1);
  const end = 2 * (held === 'to' ? x.length - 1 : 0);
  if (held !== 'none') for (const index of [end, end + 1]) hold(stiffness, mass, index);
  return modesOf(stiffness, mass, held === 'none' ? 2 : 0, count, { part, motion: 'bending' }, x, 2);
}

function torsionModes(
  ski: VibratingSki,
  torsion: Profile,
  x: Float64Array,
  held: Held,
  count: number,
  part: Mode['part'],
): Mode[] {
  const stiffness = symmetricBand(x.length, 1);
  const inertia = symmetricBand(x.length, 1);
  const { nodes, weights } = gaussLegendre(3);
  for (let e = 0; e + 1 < x.length; e++) {
    const h = x[e + 1] - x[e];
    for (let q = 0; q < 3; q++) {
      const t = (1 + nodes[q]) / 2;
      const at = x[e] + t * h;
      const k = (torsion(at) * weights[q]) / (2 * h);
      const j = ((ski.massPerLength(at) * ski.width(at) ** 2) / 12) * ((weights[q] * h) / 2);
      addSymmetric(stiffness, e, e, k);
      addSymmetric(stiffness, e + 1, e, -k);
      addSymmetric(stiffness, e + 1, e + 1, k);
      addSymmetric(inertia, e, e, j * (1 - t) * (1 - t));
      addSymmetric(inertia, e + 1, e, j * t * (1 - t));
      addSymmetric(inertia, e + 1, e + 1, j * t * t);
    }
  }
  const { ends } = ski;
  const polar = ({ mass, width }: EndPiece) => (mass * width ** 2) / 12;
  if (ends && held !== 'from') addSymmetric(inertia, 0, 0, polar(ends.rear));
  if (ends && held !== 'to') addSymmetric(inertia, x.length - 1, x.length - 1, polar(ends.front));
  if (held !== 'none') hold(stiffness, inertia, held === 'to' ? x.length - 1 : 0);
  return modesOf(stiffness, inertia, held === 'none' ? 1 : 0, count, { part, motion: 'torsion' }, x, 1);
}

/**
 * A rigid piece of even mass on the deflection at `index` and the slope after it: at s beyond the end it moves
 * by w ± sw′, so ∫(w ± sw′)² dm gives m, ±ml/2 and ml²/3.
 */
function carry(band: SymmetricBand, index: number, { mass, length }: EndPiece, side: 1 | -1): void {
  addSymmetric(band, index, index, mass);
  addSymmetric(band, index + 1, index, (side * mass * length) / 2);
  addSymmetric(band, index + 1, index + 1, (mass * length ** 2) / 3);
}

/**
 * Takes one unknown out of the problem: a vanishing mass of its own moves it to a frequency out of reach
 * without changing the band.
 */
function hold(stiffness: SymmetricBand, mass: SymmetricBand, index: number): void {
  const place = index * (stiffness.half + 1) + stiffness.half;
  const stiff = stiffness.data[place];
  const own = mass.data[place];
  prescribe(stiffness, null, index, 0);
  prescribe(mass, null, index, 0);
  stiffness.data[place] = stiff;
  mass.data[place] = 1e-9 * own;
}

function modesOf(
  stiffness: SymmetricBand,
  mass: SymmetricBand,
  rigid: number,
  count: number,
  of: Pick<Mode, 'part' | 'motion'>,
  x: Float64Array,
  stride: number,
): Mode[] {
  // A shift of the order of the first flexible λ keeps K + shift·M well conditioned.
  const length = x[x.length - 1] - x[0];
  const shift = rayleigh(stiffness, mass, x, stride, length);
  const { values, vectors } = lowestModes(stiffness, mass, count + rigid, shift);
  const modes: Mode[] = [];
  for (let k = rigid; k < count + rigid; k++) {
    const shape = x.map((_, i) => vectors[k][stride * i]);
    let most = 0;
    for (const value of shape) if (Math.abs(value) > Math.abs(most)) most = value;
    modes.push({
      hz: Math.sqrt(Math.max(0, values[k])) / (2 * Math.PI),
      ...of,
      order: k - rigid + 1,
      kind: `${of.part === 'whole' ? '' : `${of.part} `}${of.motion} ${k - rigid + 1}`,
      x,
      shape: shape.map(value => value / most),
    });
  }
  return modes;
}

/** Rayleigh's quotient of one parabola-like trial shape, a rough first λ. */
function rayleigh(
  stiffness: SymmetricBand,
  mass: SymmetricBand,
  x: Float64Array,
  stride: number,
  length: number,
): number {
  const trial = new Float64Array(stiffness.size);
  for (let i = 0; i < x.length; i++) {
    const s = (x[i] - x[0]) / length;
    trial[stride * i] = s * s;
    if (stride === 2) trial[2 * i + 1] = (2 * s) / length;
  }
  return quotient(stiffness, trial) / quotient(mass, trial) / 10;
}

function quotient({ size, half, data }: SymmetricBand, v: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - half); j <= i; j++) {
      sum += (i === j ? 1 : 2) * data[i * (half + 1) + j - i + half] * v[i] * v[j];
    }
  }
  return sum;
}
