import './shape.css';
import type { JSX } from 'preact';
import { Empty } from '../../kit/index.ts';
import { chosenPairs, t } from '../../state/index.ts';
import { Circles } from './circles.tsx';
import { LocalRadius } from './local-radius.tsx';
import { TopView } from './top-view.tsx';

export function ShapeStage(): JSX.Element {
  if (chosenPairs.value.length === 0) {
    return (
      <Empty>
        <p>{t('shape.empty')}</p>
      </Empty>
    );
  }
  return (
    <div class="stage-column shape-stage">
      <TopView />
      <div class="stage-split">
        <LocalRadius />
        <Circles />
      </div>
    </div>
  );
}
