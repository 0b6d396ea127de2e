import './flex.css';
import type { JSX } from 'preact';
import { bendable } from '../../answers/index.ts';
import { type FlexSheet, flexSheet as sheet } from '../../files/index.ts';
import { Empty, Segments } from '../../kit/index.ts';
import { activePair, chosenPairs } from '../../state/index.ts';
import { IdentifySheet } from './identify-sheet.tsx';
import { LayupSheet } from './layup-sheet.tsx';
import { LoadCurve } from './load-curve.tsx';
import { MissingBending } from './missing-bending.tsx';
import { ModesSheet } from './modes-sheet.tsx';
import { SideView } from './side-view.tsx';
import { StiffnessChart } from './stiffness-chart.tsx';

const SHEETS: readonly { value: FlexSheet; label: string }[] = [
  { value: 'stiffness', label: 'Stiffness and load' },
  { value: 'modes', label: 'Vibration' },
  { value: 'layup', label: 'Layers' },
  { value: 'readings', label: 'From bench readings' },
];

export function FlexStage(): JSX.Element {
  const active = activePair.value;
  if (!active) {
    return (
      <Empty>
        <p>Choose a pair in the rack to bend it, or up to four to bend them side by side.</p>
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
        label="Under it"
        labelHidden
        value={sheet.value}
        options={SHEETS}
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
