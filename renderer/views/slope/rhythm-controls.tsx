import type { JSX } from 'preact';
import { ConditionControls } from '../../controls/index.ts';
import { t } from '../../state/index.ts';

/** The gates of a rhythm, and what the skier can do. */
export const RhythmControls = (): JSX.Element => (
  <>
    <p class="reading-hint">{t('slope.rhythmHint')}</p>
    <ConditionControls groups={['gates', 'pole']} />
    <details class="control-group">
      <summary>{t('slope.whatSkierCanDo')}</summary>
      <ConditionControls groups={['limits']} />
    </details>
  </>
);
