import { FieldError } from '../fault/index.ts';
import { quadrature } from '../numeric/index.ts';
import type { Profile } from './profile.ts';

/**
 * Spring constants c = F/f in the manner of ISO 6289 (vocabulary only: its fixtures are not claimed). N/m.
 * Centre: on its contact points, pressed at the boot centre. Shovel and rear: clamped over the boot sole,
 * pressed at the contact point. Balance: shovel over rear.
 */
export interface Springs {
  readonly centre: number;
  /** Forebody: from the front of the sole to the front contact point. */
  readonly shovel: number;
  /** Afterbody: from the back of the sole to the rear contact point. */
  readonly rear: number;
  readonly balance: number;
}

export interface ClampedSki {
  readonly length: number;
  readonly bootCentre: number;
  readonly soleLength: number;
}

const PANELS = 60;

/** Ends of the boot sole, m from the rear contact point; throws RangeError when it does not fit on the ski. */
export function soleSpan({
  length,
  bootCentre,
  soleLength,
}: ClampedSki): readonly [rear: number, front: number] {
  const rear = bootCentre - soleLength / 2;
  const front = bootCentre + soleLength / 2;
  if (rear > 0 && front < length) return [rear, front];
  throw new FieldError({
    field: 'bootCentre',
    found: { quantity: 'station', value: (rear + front) / 2 },
    accepted: { above: (front - rear) / 2, below: length - (front - rear) / 2, quantity: 'station' },
  });
}

/** Deflection over load of a cantilever held at `clamp` and pressed at `tip`: ∫ (x − tip)²/EI dx, m/N. */
export function cantileverCompliance(profile: Profile, clamp: number, tip: number): number {
  const from = Math.min(clamp, tip);
  const to = Math.max(clamp, tip);
  return quadrature(x => (x - tip) ** 2 / profile(x), from, to, PANELS);
}

/** Deflection over load on supports `rear` and `front` pressed at `at`: ∫ m²/EI dx, m the unit load's moment. */
export function bendingCompliance(profile: Profile, rear: number, front: number, at: number): number {
  const toFront = (front - at) / (front - rear);
  const toRear = (at - rear) / (front - rear);
  return (
    quadrature(x => ((x - rear) * toFront) ** 2 / profile(x), rear, at, PANELS) +
    quadrature(x => ((front - x) * toRear) ** 2 / profile(x), at, front, PANELS)
  );
}

/** All three springs and the balance, by the unit-load theorem (any text on structures). */
export function springs(profile: Profile, ski: ClampedSki): Springs {
  const [rearEnd, frontEnd] = soleSpan(ski);
  const shovel = 1 / cantileverCompliance(profile, frontEnd, ski.length);
  const rear = 1 / cantileverCompliance(profile, rearEnd, 0);
  return {
    centre: 1 / bendingCompliance(profile, 0, ski.length, ski.bootCentre),
    shovel,
    rear,
    balance: shovel / rear,
  };
}

/**
 * Force to flatten × (sidecut length)², N·m², which ranks skis by how evenly they press the snow.
 * Source: Truong & Lussier Desbiens, Proceedings 2018, 2(6):315 [seen].
 */
export function flattenIndex(force: number, sidecutLength: number): number {
  return force * sidecutLength * sidecutLength;
}
