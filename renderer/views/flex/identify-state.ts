import { signal } from '@preact/signals';
import { DEFAULT_UNCERTAINTY } from '../../../core/flex/index.ts';

/** Standard uncertainty of one deflection, mm. */
export const uncertaintyMm = signal(DEFAULT_UNCERTAINTY * 1e3);
