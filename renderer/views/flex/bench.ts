import { computed, signal } from '@preact/signals';
import type { BenchSetup } from '../../../core/flex/index.ts';
import type { Ski } from '../../../core/pair/index.ts';
import { changeConditions, conditions } from '../../state/index.ts';

/** What the ski lies on. */
export type Rest = 'bench' | 'table';

export type Field = 'bending' | 'torsion';

export const rest = signal<Rest>('bench');
/** Which stiffness the profile chart shows. */
export const field = signal<Field>('bending');
/** Heights drawn larger than lengths. */
export const enlarged = signal(true);

/** Where the press stands, mm ahead of the boot centre. */
const foreMm = computed(() => conditions.value.benchForeMm);
/** How far the supports stand inside the contact points, mm. */
export const rearInMm = computed(() => conditions.value.benchRearInMm);
export const frontInMm = computed(() => conditions.value.benchFrontInMm);

export const moveBench = {
  press: (mm: number) => changeConditions('Place of the press', { benchForeMm: mm }, 'benchForeMm'),
  rear: (mm: number) => changeConditions('Rear support', { benchRearInMm: mm }, 'benchRearInMm'),
  front: (mm: number) => changeConditions('Front support', { benchFrontInMm: mm }, 'benchFrontInMm'),
};

export const MOST_LOAD_N = 1000;
/** Supports go in by this share of the contact length at most. */
export const SUPPORT_SHARE = 0.3;
/** The press keeps this share of the contact length away from the supports. */
const CLEAR = 0.03;

/** Supports and press for a ski, SI: the same places measured from its contact points and boot centre. */
export function setupOf(ski: Ski, load: number): BenchSetup {
  const length = ski.contactLength;
  const inset = (mm: number) =>
    rest.value === 'table' ? 0 : Math.min(Math.max(0, mm) / 1e3, SUPPORT_SHARE * length);
  const rear = inset(rearInMm.value);
  const front = length - inset(frontInMm.value);
  const [least, most] = pressRange(ski, rear, front);
  const at = Math.min(most, Math.max(least, ski.bootCentre + foreMm.value / 1e3));
  return { length, rear, front, at, load };
}

/** Stations the press may stand at, m. */
export function pressRange(ski: Ski, rear: number, front: number): [least: number, most: number] {
  return [rear + CLEAR * ski.contactLength, front - CLEAR * ski.contactLength];
}
