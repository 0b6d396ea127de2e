import type { ComponentType } from 'preact';
import type { PlainKey } from '../../core/language/index.ts';
import type { Question } from '../state/index.ts';

/**
 * One question of the rail. A view lives in `renderer/views/<name>/index.tsx`, exports one `View` and is
 * added to the list in `renderer/views/index.ts`; the frame does the rest (rail, heading, keys, scrolling of
 * the readings).
 *
 * `Stage` fills the middle: make its root `<div class="stage-column">` (a flex column) so that figures share
 * the height. `Readings` goes into the column at the right: `PairReadings`, `Reading` and `Quantity` one
 * under another. Both read signals from renderer/state and take no props.
 */
export interface View {
  readonly id: string;
  readonly question: Question;
  readonly heading: PlainKey;
  readonly Stage: ComponentType;
  readonly Readings: ComponentType;
}

/** A page that the rack opens over the questions. */
export type PageView = Omit<View, 'question'>;
