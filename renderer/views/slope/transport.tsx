import { t } from '../../state/index.ts';
import './transport.css';
import type { JSX } from 'preact';
import { decimal } from '../../../core/units/index.ts';
import { duration, leadRun } from '../../answers/index.ts';
import { Segments } from '../../kit/index.ts';
import { clock, playing, rate, seek, setRate, togglePlay } from './clock.ts';
import { phaseWords, rowAt, stretchesOf } from './skids.ts';

const RATES = [
  { value: 1, label: '1×', title: 'slope.pace.whole' },
  { value: 0.5, label: '½', title: 'slope.pace.half' },
  { value: 0.25, label: '¼', title: 'slope.pace.quarter' },
  { value: 0.1, label: '⅒', title: 'slope.pace.tenth' },
] as const;

/** Play, slow motion and the scrubber. */
export function Transport(): JSX.Element {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="transport" role="group" aria-label={t('slope.time')}>
      <PlayButton />
      <Segments
        label={t('slope.pace')}
        labelHidden
        value={rate.value}
        options={RATES.map(({ value, label, title }) => ({ value, label, title: t(title) }))}
        onInput={setRate}
      />
      <Scrubber />
    </div>
  );
}

function PlayButton(): JSX.Element {
  return (
    <button
      type="button"
      class="primary play"
      disabled={duration.value === 0}
      title={t('slope.spaceHint')}
      onClick={togglePlay}
    >
      <span aria-hidden="true">{playing.value ? '❚❚' : '▶'}</span>{' '}
      {t(playing.value ? 'board.pause' : 'board.play')}
    </button>
  );
}

function Scrubber(): JSX.Element {
  const end = duration.value;
  const lead = leadRun.value;
  const time = Math.min(clock.value, end);
  const step = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (!by) return;
    event.preventDefault();
    seek(time + by * (event.shiftKey ? 0.02 : 0.1));
  };
  const words = lead ? phaseWords(lead.track, rowAt(lead.track, time)) : '';
  return (
    <>
      <div class="scrub">
        <SkidMarks />
        <input
          class="slider"
          type="range"
          min={0}
          max={end || 1}
          step="any"
          value={time}
          disabled={end === 0}
          aria-label={t('slope.time')}
          aria-valuetext={`${decimal(time, 2)} s, ${words}`}
          style={{ '--filled': `${end > 0 ? (100 * time) / end : 0}%` }}
          onInput={event => seek(Number(event.currentTarget.value))}
          onKeyDown={step}
        />
      </div>
      <span class="clock">{decimal(time, 2)} s</span>
    </>
  );
}

/** What the lead does at the time shown. */
export function StateWords(): JSX.Element | null {
  const lead = leadRun.value;
  if (!lead) return null;
  return (
    <span class="clock-state">
      {lead.pair.mark.letter} {phaseWords(lead.track, rowAt(lead.track, clock.value))}
    </span>
  );
}

/** Hatched under the scrubber where the lead slides. */
function SkidMarks(): JSX.Element | null {
  const lead = leadRun.value;
  const end = duration.value;
  if (!lead || end === 0) return null;
  return (
    <div class="skid-marks" aria-hidden="true">
      {stretchesOf(lead.track).map(({ from, to }) => (
        <span key={from} style={{ left: `${(100 * from) / end}%`, width: `${(100 * (to - from)) / end}%` }} />
      ))}
    </div>
  );
}
