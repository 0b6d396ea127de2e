import { signal } from '@preact/signals';
import type { EdgeCamera } from '../../scene/index.ts';

/** Where the board's hill is looked at from. */
export const boardCamera = signal<EdgeCamera>('hill');
