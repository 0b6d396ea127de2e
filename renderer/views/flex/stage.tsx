import type { PlainKey } from '../../../core/language/index.ts';
import './flex.css';
import type { JSX } from 'preact';
import { bendable } from '../../answers/index.ts';
import { type FlexSheet, flexSheet as sheet } from '../../files/index.ts';
import { Empty, Segments, worded } from '../../kit/index.ts';
import { activePair, chosenPairs, t } from '../../state/index.ts';
import { IdentifySheet } from './identify-sheet.tsx';
import { LayupSheet } from './layup-sheet.tsx';
import { LoadCurve } from './load-curve.tsx';
import { MissingBending } from './missing-bending.tsx';
import { ModesSheet } from './modes-sheet.tsx';
import { SideView } from './side-view.tsx';
import { StiffnessChart } from './stiffness-chart.tsx';

const SHEETS: readonly { value: FlexSheet; label: PlainKey }[] = [
  { value: 'stiffness', label: 'flex.sheet.stiffness' },
  { value: 'modes', label: 'flex.sheet.modes' },
  { value: 'layup', label: 'flex.layers' },
  { value: 'readings', label: 'flex.sheet.readings' },
];

export function FlexStage(): JSX.Element {
  const active = activePair.value;
  if (!active) {
    return (
      <Empty>
        <p>{t('flex.empty.stage')}</p>
      </Empty>
    );
  }
  const pairs = bendable(chosenPairs.value);
  const own = pairs.find(pair => pair.id === active.id);
  const lead = own ?? pairs[0];
  return (
    <div class="stage-column flex-stage">
      {!own && <MissingBending pair={active} />}
      {lead && <SideView pairs={pairs} lead={lead} />}
      <Segments
        label={t('edge.panel')}
        labelHidden
        value={sheet.value}
        options={worded(SHEETS)}
        onInput={value => {
          sheet.value = value;
        }}
      />
      {sheet.value === 'stiffness' && (
        <div class="stage-split">
          <StiffnessChart active={active} />
          {lead && <LoadCurve pairs={pairs} lead={lead} />}
        </div>
      )}
      {sheet.value === 'modes' && <ModesSheet pairs={pairs} lead={lead ?? null} />}
      {sheet.value === 'layup' && <LayupSheet active={active} />}
      {sheet.value === 'readings' && <IdentifySheet active={active} />}
    </div>
  );
}
