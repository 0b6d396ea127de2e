import type { JSX } from 'preact';
import { ConditionControls } from '../../controls/index.ts';

/** The gates of a rhythm, and what the skier can do. */
export const RhythmControls = (): JSX.Element => (
  <>
    <p class="reading-hint">
      The quickest turn from gate to gate, at the pace that can be kept for ever, within what the skier can
      do.
    </p>
    <ConditionControls groups={['gates', 'pole']} />
    <details class="control-group">
      <summary>What the skier can do</summary>
      <ConditionControls groups={['limits']} />
    </details>
  </>
);
