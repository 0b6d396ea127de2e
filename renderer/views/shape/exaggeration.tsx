import type { JSX } from 'preact';
import { Segments } from '../../kit/index.ts';
import { changeView, view } from '../../state/index.ts';

export function ExaggerationControl(): JSX.Element {
  return (
    <Segments
      label="Widths"
      value={view.value.exaggeration}
      options={[
        { value: 1, label: '×1', title: 'True to scale' },
        { value: 5, label: '×5', title: 'Widths drawn five times as wide' },
      ]}
      onInput={exaggeration => changeView({ exaggeration })}
    />
  );
}
