import { signal } from '@preact/signals';
import type { EdgeCamera } from '../../scene/index.ts';

/** What stands under the scene. */
export type Sheet = 'radius' | 'pressure' | 'twist' | 'hold' | 'boot' | 'flat';

export const sheet = signal<Sheet>('radius');
export const camera = signal<EdgeCamera>('ski');

/** Bend and twist as drawn in the scene; 1 is true. */
export type Exaggeration = 1 | 3 | 10;
export const exaggeration = signal<Exaggeration>(1);

/** Station read by the cursor of every chart along the ski, m from the rear contact point. */
export const station = signal<number | null>(null);
