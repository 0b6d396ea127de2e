import './slope.css';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { leadRhythm } from '../../answers/index.ts';
import { Empty, Segments } from '../../kit/index.ts';
import type { HillCamera } from '../../scene/index.ts';
import { activePair } from '../../state/index.ts';
import { BindingSheet } from './binding-sheet.tsx';
import { togglePlay } from './clock.ts';
import { CoachSheet } from './coach-sheet.tsx';
import { EnergyBook } from './energy-book.tsx';
import { Hill } from './hill.tsx';
import { PlanFigure } from './plan-figure.tsx';
import { ProgrammeSheet } from './programme-sheet.tsx';
import { RhythmStrip } from './rhythm-strip.tsx';
import { RunNotice } from './run-notice.tsx';
import { arrowsShown, camera, type Sheet, sheet } from './settings.ts';
import { Traces } from './traces.tsx';
import { StateWords, Transport } from './transport.tsx';

const SHEETS: readonly { value: Sheet; label: string; title?: string }[] = [
  { value: 'traces', label: 'Over time' },
  { value: 'plan', label: 'From above', title: 'The paths of skis and mass' },
  { value: 'coach', label: 'Why', title: 'From edge angle to grip, and what to change' },
  { value: 'energy', label: 'Energy', title: 'Where the energy went' },
  { value: 'binding', label: 'Binding', title: 'Loads handed to the binding' },
  { value: 'programme', label: 'Edge angle', title: 'What the skis are told to do' },
];

const CAMERAS: readonly { value: HillCamera; label: string; title: string }[] = [
  { value: 'follow', label: 'Follow', title: 'From behind the skier' },
  { value: 'side', label: 'Side', title: 'From the side, along with the skier' },
  { value: 'above', label: 'Above', title: 'From above' },
  { value: 'along', label: 'Front', title: 'From the front, along the length of the ski' },
  { value: 'whole', label: 'Whole', title: 'The whole run' },
];

export function SlopeStage(): JSX.Element {
  useEffect(() => {
    window.addEventListener('keydown', onSpace);
    return () => window.removeEventListener('keydown', onSpace);
  }, []);
  if (!activePair.value) {
    return (
      <Empty>
        <p>Choose a pair in the rack to send it down the hill; a second pair goes along as a ghost.</p>
      </Empty>
    );
  }
  return (
    <div class="stage-column slope-stage">
      <div class="toolbar">
        <Segments
          label="Camera"
          labelHidden
          value={camera.value}
          options={CAMERAS}
          onInput={next => {
            camera.value = next;
          }}
        />
        <label class="check">
          <input
            type="checkbox"
            checked={arrowsShown.value}
            onChange={() => {
              arrowsShown.value = !arrowsShown.value;
            }}
          />
          Forces
        </label>
      </div>
      <RunNotice />
      <Hill />
      <Transport />
      <div class="under-scene">
        <Segments
          label="Panel"
          labelHidden
          value={sheet.value}
          options={SHEETS}
          onInput={next => {
            sheet.value = next;
          }}
        />
        {leadRhythm.value ? <RhythmStrip /> : <StateWords />}
      </div>
      <div class="slope-sheet" data-sheet={sheet.value}>
        {sheet.value === 'traces' && <Traces />}
        {sheet.value === 'plan' && <PlanFigure />}
        {sheet.value === 'binding' && <BindingSheet />}
        {sheet.value === 'programme' && <ProgrammeSheet />}
        {sheet.value === 'energy' && <EnergyBook />}
        {sheet.value === 'coach' && <CoachSheet />}
      </div>
    </div>
  );
}

/** Space plays and pauses, except where it already means something. */
function onSpace(event: KeyboardEvent): void {
  if (event.key !== ' ' || event.defaultPrevented || document.querySelector('dialog[open]')) return;
  const target = event.target as HTMLElement;
  if (target.closest('button, input, select, textarea, summary, [contenteditable]')) return;
  event.preventDefault();
  togglePlay();
}
