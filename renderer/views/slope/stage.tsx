import './slope.css';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { PlainKey } from '../../../core/language/index.ts';
import { leadRhythm } from '../../answers/index.ts';
import { Empty, Segments, worded } from '../../kit/index.ts';
import type { HillCamera } from '../../scene/index.ts';
import { activePair, t } from '../../state/index.ts';
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

const SHEETS: readonly { value: Sheet; label: PlainKey; title?: PlainKey }[] = [
  { value: 'traces', label: 'slope.sheet.traces' },
  { value: 'plan', label: 'common.fromAbove', title: 'slope.sheet.planHint' },
  { value: 'coach', label: 'slope.sheet.coach', title: 'slope.sheet.coachHint' },
  { value: 'energy', label: 'slope.sheet.energy', title: 'slope.energyTitle' },
  { value: 'binding', label: 'slope.sheet.binding', title: 'slope.bindingTitle' },
  { value: 'programme', label: 'condition.edge', title: 'slope.sheet.programmeHint' },
];

const CAMERAS: readonly { value: HillCamera; label: PlainKey; title: PlainKey }[] = [
  { value: 'follow', label: 'slope.camera.follow', title: 'slope.camera.followHint' },
  { value: 'side', label: 'slope.camera.side', title: 'slope.camera.sideHint' },
  { value: 'above', label: 'slope.camera.above', title: 'common.fromAbove' },
  { value: 'along', label: 'slope.camera.along', title: 'slope.camera.alongHint' },
  { value: 'whole', label: 'slope.camera.whole', title: 'slope.camera.wholeHint' },
];

export function SlopeStage(): JSX.Element {
  useEffect(() => {
    window.addEventListener('keydown', onSpace);
    return () => window.removeEventListener('keydown', onSpace);
  }, []);
  if (!activePair.value) {
    return (
      <Empty>
        <p>{t('slope.empty')}</p>
      </Empty>
    );
  }
  return (
    <div class="stage-column slope-stage">
      <div class="toolbar">
        <Segments
          label={t('slope.camera')}
          labelHidden
          value={camera.value}
          options={worded(CAMERAS)}
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
          {t('slope.forces')}
        </label>
      </div>
      <RunNotice />
      <Hill />
      <Transport />
      <div class="under-scene">
        <Segments
          label={t('slope.panel')}
          labelHidden
          value={sheet.value}
          options={worded(SHEETS)}
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
