import type { ComponentType } from 'preact';
import { squadPage } from '../squad/index.ts';
import type { Page } from '../state/index.ts';
import { Board } from './board/index.tsx';
import { comparePage } from './compare/index.tsx';
import { edgeView } from './edge/index.tsx';
import { flexView } from './flex/index.tsx';
import { setView } from './set/index.tsx';
import { shapeView } from './shape/index.tsx';
import { slopeView } from './slope/index.tsx';
import type { PageView, View } from './view.ts';

export type { PageView, View } from './view.ts';

/** In the order of the rail; add a view here and it has its place, its key and its heading. */
export const views: readonly View[] = [shapeView, flexView, edgeView, slopeView, setView];

/** Pages laid over the questions, opened from the rack. */
export const pages: Record<Page, PageView> = { squad: squadPage, compare: comparePage };

/** The full-screen teaching mode: stands in for the whole frame while `view.value.board` is set. */
export const board: ComponentType | null = Board;
