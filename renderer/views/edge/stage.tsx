import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { Empty, Segments, worded } from '../../kit/index.ts';
import { activePair, chosenPairs, t } from '../../state/index.ts';
import { AlongCharts } from './along-charts.tsx';
import { BootSheet } from './boot-sheet.tsx';
import { Controls } from './controls.tsx';
import { FlatDrawings } from './flat-drawings.tsx';
import { HoldSheet } from './hold-sheet.tsx';
import { LoadEdgeMap } from './load-edge-map.tsx';
import { MissingStiffness } from './missing-stiffness.tsx';
import { RadiusChart } from './radius-chart.tsx';
import { SceneStage } from './scene-stage.tsx';
import { type Sheet, sheet } from './sheet-state.ts';
import { StaleWhileSolving } from './stale-while-solving.tsx';

const SHEETS: readonly { value: Sheet; label: PlainKey }[] = [
  { value: 'radius', label: 'common.radius' },
  { value: 'pressure', label: 'edge.sheet.pressure' },
  { value: 'twist', label: 'edge.sheet.twist' },
  { value: 'hold', label: 'edge.sheet.hold' },
  { value: 'boot', label: 'edge.sheet.boot' },
  { value: 'flat', label: 'edge.sheet.flat' },
];

export function EdgeStage(): JSX.Element {
  const active = activePair.value;
  if (!active) {
    return (
      <Empty>
        <p>{t('edge.empty')}</p>
      </Empty>
    );
  }
  const pairs = chosenPairs.value;
  return (
    <div class="stage-column edge-stage">
      <Controls />
      <MissingStiffness pair={active} />
      <SceneStage />
      <Segments
        label={t('edge.panel')}
        labelHidden
        value={sheet.value}
        options={worded(SHEETS)}
        onInput={value => {
          sheet.value = value;
        }}
      />
      <StaleWhileSolving class="stage-split edge-sheet">
        {sheet.value === 'radius' && (
          <>
            <RadiusChart pairs={pairs} active={active} />
            <LoadEdgeMap pair={active} />
          </>
        )}
        {(sheet.value === 'pressure' || sheet.value === 'twist') && (
          <AlongCharts pairs={pairs} sheet={sheet.value} />
        )}
        {sheet.value === 'hold' && <HoldSheet pairs={pairs} active={active} />}
        {sheet.value === 'boot' && <BootSheet pairs={pairs} active={active} />}
        {sheet.value === 'flat' && <FlatDrawings pairs={pairs} active={active} />}
      </StaleWhileSolving>
    </div>
  );
}
