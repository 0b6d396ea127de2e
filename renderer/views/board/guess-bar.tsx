import './guess-bar.css';
import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { boardAnswers } from '../../answers/index.ts';
import { conditions, t, view } from '../../state/index.ts';
import { BigSlider } from './big-slider.tsx';
import {
  ask,
  forget,
  guessed,
  guessPhase,
  MAX_GUESS,
  MIN_GUESS,
  NEUTRAL_RADIUS,
  place,
  show,
} from './guess.ts';
import { askedAnswer, askedPlace, missNow, nextPlace } from './guessing.ts';

/** What the room is asked, what it said, and by how much it missed. */
export function GuessBar({ onShow }: { onShow(): void }): JSX.Element | null {
  const phase = guessPhase.value;
  const guess = guessed.value;
  const request = askedAnswer();
  const { system } = view.value;
  const metres = (value: number) => formatQuantity(value, 'radius', { system }).text;
  if (!request || phase === 'off') return null;
  if (phase === 'asking') {
    return (
      <section class="guess-bar" aria-label={t('board.guessFirst')}>
        <p>
          {t('board.whereDoesItGo', {
            edge: { quantity: 'angleDeg', value: conditions.value.edgeDeg, decimals: 0 },
            ski: `${request.ski.mark.letter} ${request.ski.name}`,
          })}
        </p>
        <BigSlider
          label={t('board.guess')}
          value={guess ?? NEUTRAL_RADIUS}
          min={MIN_GUESS}
          max={MAX_GUESS}
          step={0.5}
          text={guess === null ? '?' : metres(guess)}
          onInput={place}
        />
        <button
          type="button"
          class="primary"
          disabled={guess === null}
          onClick={() => {
            if (show()) onShow();
          }}
        >
          {t('board.showAnswer')}
        </button>
      </section>
    );
  }
  const next = nextPlace();
  const miss = missNow();
  return (
    <section class="guess-bar" aria-label={t('board.guessFirst')} role="status">
      <p>
        {t(request.slides ? 'board.slidesOn' : 'board.turnsOn', {
          ski: `${request.ski.mark.letter} ${request.ski.name}`,
          radius: { quantity: 'radius', value: request.path },
        })}
        {guess !== null && miss !== null && (
          <>
            {' '}
            {t('board.roomSaid', { guess: { quantity: 'radius', value: guess } })}{' '}
            <strong>{t('board.missedBy', { miss: { quantity: 'radius', value: miss } })}</strong>
          </>
        )}
      </p>
      {next !== null && (
        <button type="button" class="primary" onClick={() => ask(next)}>
          {t('board.nowGuess', { letter: boardAnswers.value[next]!.ski.mark.letter })}
        </button>
      )}
      <button type="button" onClick={() => ask(askedPlace())}>
        {t('board.guessAgain')}
      </button>
      <button type="button" onClick={forget}>
        {t('board.done')}
      </button>
    </section>
  );
}
