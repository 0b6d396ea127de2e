import { FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import {
  addSymmetric,
  factorSymmetric,
  gaussLegendre,
  solveSymmetric,
  symmetricBand,
} from '../numeric/index.ts';
import { DEFAULT_ELEMENTS, meshThrough, nodeAt } from './beam.ts';
import { type BenchSetup, checkSetup } from './bench-press.ts';
import type { Profile } from './profile.ts';
import { bendingCompliance, cantileverCompliance } from './springs.ts';

/** Share by which the small-deflection answer may be off before it is said. */
const SMALL_BEND_SLACK = 0.02;

export interface LargeBend {
  /** Under the load across the line of the supports, or at the cantilever's end, m. */
  readonly deflection: number;
  /** What small-deflection theory gives, m. */
  readonly smallDeflection: number;
  /** (small − large)/large. */
  readonly offBy: number;
  readonly beyondSmall: boolean;
  /** One sentence for the reading. */
  readonly statement: Sentence;
  readonly iterations: number;
}

interface Chain {
  readonly x: Float64Array;
  /** Element bending stiffness over length: harmonic mean of EI, exact for an even moment. */
  readonly spring: Float64Array;
}

/**
 * Inextensible elastica in the slope angle ψ(x): the energy ∫½EIψ'² − load·rise is made least by Newton's
 * method on linear elements, with load steps and a halved step where Newton overshoots.
 * Cantilever from `clamp` to `tip` under a load that keeps its direction (Bisshopp & Drucker,
 * Q. Appl. Math. 3 (1945) 272).
 */
export function largeCantilever(
  profile: Profile,
  clamp: number,
  tip: number,
  load: number,
  elements = DEFAULT_ELEMENTS,
): LargeBend {
  const from = Math.min(clamp, tip);
  const mirrored: Profile = tip > clamp ? x => profile(clamp + x) : x => profile(clamp - x);
  const chain = chainOf(mirrored, meshThrough(0, Math.max(clamp, tip) - from, [], elements));
  const weight = new Float64Array(chain.x.length - 1).fill(load);
  const { psi, iterations } = settle(chain, weight, null);
  const small = load * cantileverCompliance(profile, clamp, tip);
  return judged(rise(chain, psi, 0, chain.x.length - 1), small, iterations);
}

/**
 * Bench press with large bends: the supports carry the same two points of the ski on rollers that give no
 * lengthwise force. Throws RangeError as `checkSetup` does, or when no equilibrium is found for the load.
 */
export function largeBend(profile: Profile, setup: BenchSetup): LargeBend {
  checkSetup(setup);
  const { rear, front, at, load, elements = DEFAULT_ELEMENTS } = setup;
  const chain = chainOf(profile, meshThrough(rear, front, [at], elements));
  const middle = nodeAt(chain.x, at);
  // The rear part pulls the load down; the front part returns to the line of the supports by the constraint.
  const weight = Float64Array.from({ length: chain.x.length - 1 }, (_, e) => (e < middle ? load : 0));
  const { psi, iterations } = settle(chain, weight, new Float64Array(chain.x.length));
  const small = load * bendingCompliance(profile, rear, front, at);
  return judged(rise(chain, psi, 0, middle), small, iterations);
}

function chainOf(profile: Profile, x: Float64Array): Chain {
  const { nodes, weights } = gaussLegendre(3);
  const spring = new Float64Array(x.length - 1);
  for (let e = 0; e < spring.length; e++) {
    const half = (x[e + 1] - x[e]) / 2;
    let soft = 0;
    for (let q = 0; q < 3; q++) soft += (weights[q] * half) / profile(x[e] + half * (1 + nodes[q]));
    spring[e] = 1 / soft;
  }
  return { x, spring };
}

const half = 0.5 / Math.sqrt(3);
const AT = [0.5 - half, 0.5 + half];

/** ∫ sin ψ between two nodes. */
function rise({ x }: Chain, psi: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let e = from; e < to; e++) {
    for (const t of AT) sum += ((x[e + 1] - x[e]) / 2) * Math.sin((1 - t) * psi[e] + t * psi[e + 1]);
  }
  return sum;
}

/**
 * Equilibrium under `weight` (N, one value an element) acting on sin ψ. Clamped at the first node, or with
 * `closing` storage given free at both ends and ∫ sin ψ = 0 kept by a multiplier.
 */
function settle(
  chain: Chain,
  weight: Float64Array,
  closing: Float64Array | null,
): { psi: Float64Array; iterations: number } {
  const n = chain.x.length;
  const psi = new Float64Array(n);
  let multiplier = 0;
  let iterations = 0;
  const steps = 8;
  const band = symmetricBand(n, 1);
  const residual = new Float64Array(n);
  const gauge = new Float64Array(n);
  const anchor = chain.spring[0];
  for (let step = 1; step <= steps; step++) {
    const share = step / steps;
    for (let turn = 0; ; turn++) {
      iterations++;
      const gap = assemble(chain, weight, share, multiplier, psi, band.data, residual, closing);
      const scale = weight.reduce((most, w) => Math.max(most, Math.abs(w)), 0) * chain.x[n - 1] + 1e-30;
      let worst = Math.abs(gap) / chain.x[n - 1];
      for (let i = closing ? 0 : 1; i < n; i++) worst = Math.max(worst, Math.abs(residual[i]) / scale);
      if (worst < 1e-12) break;
      if (turn === 60)
        throw new FieldError({
          field: 'load',
          found: undefined,
          accepted: { key: 'accepted.smallerLoad' },
        });
      addSymmetric(band, 0, 0, closing ? anchor : 1e6 * anchor);
      if (!closing) residual[0] = 0;
      factorSymmetric(band);
      solveSymmetric(band, residual);
      if (closing) {
        // The free chain may turn as a whole, so its matrix is singular: it is anchored, and the anchor taken
        // out again together with the constraint by a two-by-two elimination.
        gauge.fill(0);
        gauge[0] = 1;
        solveSymmetric(band, gauge);
        const pull = Float64Array.from(closing);
        solveSymmetric(band, pull);
        let cr = 0;
        let cg = 0;
        let cp = 0;
        for (let i = 0; i < n; i++) {
          cr += closing[i] * residual[i];
          cg += closing[i] * gauge[i];
          cp += closing[i] * pull[i];
        }
        const a = 1 - anchor * gauge[0];
        const b = pull[0];
        const c = anchor * cg;
        const rhs = -gap - cr;
        const det = a * cp + b * c;
        const turned = (residual[0] * cp + b * rhs) / det;
        const force = (a * rhs - c * residual[0]) / det;
        for (let i = 0; i < n; i++) residual[i] += anchor * turned * gauge[i] + force * pull[i];
        multiplier += force;
      }
      let largest = 0;
      for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(residual[i]));
      const damp = largest > 0.5 ? 0.5 / largest : 1;
      for (let i = 0; i < n; i++) psi[i] += damp * residual[i];
    }
  }
  return { psi, iterations };
}

/** Fills the tangent's band and the out-of-balance moments; returns ∫ sin ψ when the ends must stay level. */
function assemble(
  { x, spring }: Chain,
  weight: Float64Array,
  share: number,
  multiplier: number,
  psi: Float64Array,
  data: Float64Array,
  residual: Float64Array,
  closing: Float64Array | null,
): number {
  data.fill(0);
  residual.fill(0);
  closing?.fill(0);
  let gap = 0;
  for (let e = 0; e < spring.length; e++) {
    const k = spring[e];
    const moment = k * (psi[e + 1] - psi[e]);
    residual[e] += moment;
    residual[e + 1] -= moment;
    data[2 * e + 1] += k;
    data[2 * e + 3] += k;
    data[2 * e + 2] -= k;
    const pull = share * weight[e] + multiplier;
    const h = (x[e + 1] - x[e]) / 2;
    for (const t of AT) {
      const angle = (1 - t) * psi[e] + t * psi[e + 1];
      const sin = h * Math.sin(angle);
      const cos = h * Math.cos(angle);
      residual[e] += pull * cos * (1 - t);
      residual[e + 1] += pull * cos * t;
      data[2 * e + 1] += pull * sin * (1 - t) * (1 - t);
      data[2 * e + 3] += pull * sin * t * t;
      data[2 * e + 2] += pull * sin * t * (1 - t);
      if (closing) {
        closing[e] += cos * (1 - t);
        closing[e + 1] += cos * t;
        gap += sin;
      }
    }
  }
  return gap;
}

function judged(deflection: number, smallDeflection: number, iterations: number): LargeBend {
  const offBy = deflection === 0 ? 0 : smallDeflection / deflection - 1;
  const beyondSmall = Math.abs(offBy) > SMALL_BEND_SLACK;
  const off = { quantity: 'share', value: Math.abs(offBy), decimals: 1 } as const;
  const statement: Sentence = beyondSmall
    ? { key: 'flex.largeBendShown', values: { off, way: offBy > 0 ? 'large' : 'small' } }
    : { key: 'flex.smallBendDoes', values: { off, slack: { quantity: 'share', value: SMALL_BEND_SLACK } } };
  return { deflection, smallDeflection, offBy, beyondSmall, statement, iterations };
}
