import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { decimal } from '../../../core/units/index.ts';
import { Segments } from '../../kit/index.ts';
import type { EdgeSceneHandle } from '../../scene/index.ts';

const RATES = [
  { value: 1, label: '1×', title: 'Real time' },
  { value: 0.25, label: '¼×', title: 'A quarter of real time' },
];

/** Plays the carving of the arc, slows it and scrubs through it. */
export function ScenePlayback({ scene }: { scene: EdgeSceneHandle | null }): JSX.Element {
  const time = useSignal(0);
  const playing = useSignal(false);
  const rate = useSignal(1);

  useEffect(() => {
    if (!scene) return;
    time.value = scene.time;
    scene.onTime((seconds, moving) => {
      time.value = seconds;
      playing.value = moving && seconds < scene.duration;
    });
    return () => scene.onTime(null);
  }, [scene]);

  const duration = scene?.duration ?? 0;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="scene-playback" role="group" aria-label="Carving the arc">
      <button
        type="button"
        class="play"
        disabled={!scene}
        onClick={() => (playing.value ? scene?.pause() : scene?.play())}
      >
        {playing.value ? 'Pause' : 'Carve it'}
      </button>
      <input
        class="slider"
        type="range"
        aria-label="Time along the arc"
        aria-valuetext={`${decimal(time.value, 1)} s of ${decimal(duration, 1)} s`}
        min={0}
        max={Math.max(duration, 0.01)}
        step={0.01}
        value={Math.min(time.value, duration)}
        disabled={!scene}
        style={{ '--filled': `${duration > 0 ? (time.value / duration) * 100 : 0}%` }}
        onInput={event => {
          scene?.pause();
          scene?.seek(Number(event.currentTarget.value));
        }}
      />
      <span class="scene-time">{`${decimal(time.value, 1)} s`}</span>
      <Segments
        label="Pace"
        labelHidden
        value={rate.value}
        options={RATES}
        onInput={value => {
          rate.value = value;
          scene?.setRate(value);
        }}
      />
    </div>
  );
}
