import { signal } from '@preact/signals';

/** Radius of the turn the pairs are asked to make, m. */
export const turnAsked = signal(10);
