import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { decimal } from '../../../core/units/index.ts';
import { Segments } from '../../kit/index.ts';
import type { EdgeSceneHandle } from '../../scene/index.ts';
import { t } from '../../state/index.ts';

const RATES = [
  { value: 1, label: '1×', title: 'edge.pace.whole' },
  { value: 0.25, label: '¼×', title: 'edge.pace.quarter' },
] as const;

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
    <div class="scene-playback" role="group" aria-label={t('edge.carvingArc')}>
      <button
        type="button"
        class="play"
        disabled={!scene}
        onClick={() => (playing.value ? scene?.pause() : scene?.play())}
      >
        {t(playing.value ? 'board.pause' : 'board.play')}
      </button>
      <input
        class="slider"
        type="range"
        aria-label={t('edge.timeAlongArc')}
        aria-valuetext={t('edge.timeOf', { time: decimal(time.value, 1), duration: decimal(duration, 1) })}
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
        label={t('edge.pace')}
        labelHidden
        value={rate.value}
        options={RATES.map(({ value, label, title }) => ({ value, label, title: t(title) }))}
        onInput={value => {
          rate.value = value;
          scene?.setRate(value);
        }}
      />
    </div>
  );
}
