import { signal } from '@preact/signals';
import { reachOf } from '../../core/conditions/index.ts';
import type { BenchSetup } from '../../core/flex/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { MM } from '../../core/units/index.ts';
import { conditions } from '../state/index.ts';

/** What the ski lies on. */
export type Rest = 'bench' | 'table';

export const rest = signal<Rest>('bench');

export const [, MOST_LOAD_N] = reachOf('benchLoadN');
/** Supports go in by this share of the contact length at most. */
export const SUPPORT_SHARE = 0.3;
/** The press keeps this share of the contact length away from the supports. */
const CLEAR = 0.03;

/** Supports and press for a ski, SI: the same places measured from its contact points and boot centre. */
export function setupOf(ski: Ski, load: number): BenchSetup {
  const { benchForeMm, benchRearInMm, benchFrontInMm } = conditions.value;
  const length = ski.contactLength;
  const inset = (mm: number) =>
    rest.value === 'table' ? 0 : Math.min(Math.max(0, mm) * MM, SUPPORT_SHARE * length);
  const rear = inset(benchRearInMm);
  const front = length - inset(benchFrontInMm);
  const [least, most] = pressRange(ski, rear, front);
  const at = Math.min(most, Math.max(least, ski.bootCentre + benchForeMm * MM));
  return { length, rear, front, at, load };
}

/** Stations the press may stand at, m. */
export function pressRange(ski: Ski, rear: number, front: number): [least: number, most: number] {
  return [rear + CLEAR * ski.contactLength, front - CLEAR * ski.contactLength];
}
