import type { PlainKey } from '../../../core/language/index.ts';
import './board.css';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { boardAnswers, sideBySide } from '../../answers/index.ts';
import { CAUTION } from '../../help/index.ts';
import { Segments } from '../../kit/index.ts';
import type { EdgeCamera, EdgeSceneHandle } from '../../scene/index.ts';
import { changeBoard, changeView, t } from '../../state/index.ts';
import { BoardScene } from './board-scene.tsx';
import { boardCamera } from './camera.ts';
import { Chain } from './chain.tsx';
import { ask, forget, guessPhase } from './guess.ts';
import { GuessBar } from './guess-bar.tsx';
import { Handout, printHandout } from './handout.tsx';
import { Sliders } from './sliders.tsx';
import { Transport } from './transport.tsx';
import { Verdicts } from './verdicts.tsx';

const CAMERAS: readonly { value: EdgeCamera; label: PlainKey }[] = [
  { value: 'hill', label: 'board.camera.hill' },
  { value: 'arc', label: 'board.camera.arc' },
  { value: 'ski', label: 'board.camera.ski' },
];

const leave = (): void => {
  forget();
  changeView({ board: false });
};

/** The coach's full-screen teaching mode. */
export function Board(): JSX.Element {
  const scene = useSignal<EdgeSceneHandle | null>(null);
  const time = useSignal(0);
  const playing = useSignal(false);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open]')) return;
      leave();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  const guessing = guessPhase.value !== 'off';
  return (
    <>
      <main class="board">
        <header class="board-top">
          <h1 tabIndex={-1}>{t('board.question')}</h1>
          <Segments
            label={t('board.lookFrom')}
            labelHidden
            value={boardCamera.value}
            options={CAMERAS.map(({ value, label }) => ({ value, label: t(label) }))}
            onInput={next => {
              boardCamera.value = next;
            }}
          />
          <Segments
            label={t('board.skis')}
            labelHidden
            value={sideBySide.value ? 2 : 1}
            options={[
              { value: 1, label: t('board.oneSki') },
              { value: 2, label: t('board.twoSkis') },
            ]}
            onInput={count => {
              forget();
              changeBoard(t('board.skisOnBoard'), { sideBySide: count === 2 });
            }}
          />
          <button
            type="button"
            class={guessing ? 'primary' : ''}
            aria-pressed={guessing}
            onClick={() => (guessing ? forget() : ask())}
          >
            {t('board.guessFirst')}
          </button>
          <button type="button" onClick={printHandout}>
            {t('board.handout')}
          </button>
          <button type="button" onClick={leave}>
            {t('board.close')}
          </button>
        </header>
        {boardAnswers.value.length === 0 ? (
          <p class="board-empty">{t('board.noPair')}</p>
        ) : (
          <>
            <div class="board-middle">
              <div class="board-left">
                <BoardScene
                  scene={scene}
                  onTime={(seconds, isPlaying) => {
                    time.value = seconds;
                    playing.value = isPlaying;
                  }}
                />
                <GuessBar
                  onShow={() => {
                    scene.value?.seek(0);
                    scene.value?.play();
                  }}
                />
                <Verdicts />
                {guessPhase.value !== 'asking' && <Transport scene={scene} time={time} playing={playing} />}
              </div>
              <Chain />
            </div>
            <Sliders />
          </>
        )}
        <p class="board-caution">{t(CAUTION.slope)}</p>
      </main>
      <Handout />
    </>
  );
}
