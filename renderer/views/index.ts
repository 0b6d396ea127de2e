import type { ComponentType } from 'preact';
import { edgeView } from './edge/index.tsx';
import { flexView } from './flex/index.tsx';
import { shapeView } from './shape/index.tsx';
import { slopeView } from './slope/index.tsx';
import type { View } from './view.ts';

export type { View } from './view.ts';

/** In the order of the rail; add a view here and it has its place, its key and its heading. */
export const views: readonly View[] = [shapeView, flexView, edgeView, slopeView];

/** The full-screen teaching mode: stands in for the whole frame while `view.value.board` is set. */
export const board: ComponentType | null = null;
