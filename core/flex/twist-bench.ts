import { quadrature } from '../numeric/index.ts';
import type { Profile } from './profile.ts';
import { type ClampedSki, soleSpan } from './springs.ts';

const PANELS = 60;

/** Torque over twist between a clamp and the station where the torque acts: 1/∫dx/GJ, N·m a radian. */
export function torsionalSpring(torsion: Profile, clamp: number, at: number): number {
  return 1 / quadrature(x => 1 / torsion(x), Math.min(clamp, at), Math.max(clamp, at), PANELS);
}

export interface TwistBench {
  /** M/α with the boot sole clamped and the torque at the contact point, N·m a radian. */
  readonly shovel: number;
  readonly rear: number;
}

/** Torsional spring constants of fore- and afterbody: GJ φ' = M beyond the clamped sole. */
export function twistBench(torsion: Profile, ski: ClampedSki): TwistBench {
  const [rearEnd, frontEnd] = soleSpan(ski);
  return {
    shovel: torsionalSpring(torsion, frontEnd, ski.length),
    rear: torsionalSpring(torsion, rearEnd, 0),
  };
}
