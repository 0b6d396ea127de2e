import type { JSX } from 'preact';
import { Segments } from '../../kit/index.ts';
import { changeView, t, view } from '../../state/index.ts';

export function ExaggerationControl(): JSX.Element {
  return (
    <Segments
      label={t('shape.widths')}
      value={view.value.exaggeration}
      options={[
        { value: 1, label: '×1', title: t('shape.trueToScale') },
        { value: 5, label: '×5', title: t('shape.fiveTimes') },
      ]}
      onInput={exaggeration => changeView({ exaggeration })}
    />
  );
}
