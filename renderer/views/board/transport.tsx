import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { EdgeSceneHandle } from '../../scene/index.ts';
import { t } from '../../state/index.ts';

const SLOW = 0.25;

/** Play, slow and scrub along the arc. */
export function Transport(props: {
  readonly scene: Signal<EdgeSceneHandle | null>;
  readonly time: Signal<number>;
  readonly playing: Signal<boolean>;
}): JSX.Element | null {
  const slow = useSignal(false);
  const scene = props.scene.value;
  if (!scene) return null;
  const playing = props.playing.value;
  const time = props.time.value;
  const { duration } = scene;
  const clock = t('board.clock', { time: { quantity: 'time', value: time, decimals: 1 } });
  return (
    <div class="board-transport">
      <button type="button" class="primary" onClick={() => (playing ? scene.pause() : scene.play())}>
        <span aria-hidden="true">{playing ? '❚❚' : '▶'}</span> {t(playing ? 'board.pause' : 'board.play')}
      </button>
      <button
        type="button"
        aria-pressed={slow.value}
        class={slow.value ? 'pressed' : ''}
        onClick={() => {
          slow.value = !slow.value;
          scene.setRate(slow.value ? SLOW : 1);
        }}
      >
        {t('board.slow')}
      </button>
      <input
        type="range"
        class="slider"
        min={0}
        max={duration || 1}
        step="any"
        value={time}
        aria-label={t('board.timeAlong')}
        aria-valuetext={clock}
        style={{ '--filled': `${duration > 0 ? (100 * time) / duration : 0}%` }}
        onInput={event => scene.seek(Number(event.currentTarget.value))}
      />
      <span class="board-clock">{clock}</span>
    </div>
  );
}
