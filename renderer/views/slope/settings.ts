import { signal } from '@preact/signals';
import type { HillCamera } from '../../scene/index.ts';

export type Sheet = 'traces' | 'plan' | 'programme' | 'energy' | 'binding' | 'coach';

/** How the hill is looked at. */
export const camera = signal<HillCamera>('follow');
export const sheet = signal<Sheet>('traces');
export const arrowsShown = signal(true);
export const measuredShown = signal(false);
