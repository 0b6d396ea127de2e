import './transport.css';
import type { JSX } from 'preact';
import { decimal } from '../../../core/units/index.ts';
import { duration, leadRun } from '../../answers/index.ts';
import { Segments } from '../../kit/index.ts';
import { clock, playing, rate, seek, setRate, togglePlay } from './clock.ts';
import { phaseWords, rowAt, stretchesOf } from './skids.ts';

const RATES = [
  { value: 1, label: '1×', title: 'As fast as on snow' },
  { value: 0.5, label: '½', title: 'Half speed' },
  { value: 0.25, label: '¼', title: 'Quarter speed' },
  { value: 0.1, label: '⅒', title: 'A tenth of the speed' },
];

/** Play, slow motion and the scrubber. */
export function Transport(): JSX.Element {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="transport" role="group" aria-label="Time">
      <PlayButton />
      <Segments label="Pace" labelHidden value={rate.value} options={RATES} onInput={setRate} />
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
      title="Space plays and pauses"
      onClick={togglePlay}
    >
      <span aria-hidden="true">{playing.value ? '❚❚' : '▶'}</span> {playing.value ? 'Pause' : 'Play'}
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
          aria-label="Time"
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
