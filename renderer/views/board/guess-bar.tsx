import './guess-bar.css';
import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { boardAnswers } from '../../answers/index.ts';
import { conditions, view } from '../../state/index.ts';
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
  const asked = askedAnswer();
  const { system } = view.value;
  const metres = (value: number) => formatQuantity(value, 'radius', { system }).text;
  if (!asked || phase === 'off') return null;
  if (phase === 'asking') {
    return (
      <section class="guess-bar" aria-label="Guess first">
        <p>
          {conditions.value.edgeDeg.toFixed(0)}° of edge on{' '}
          <strong>
            {asked.ski.mark.letter} {asked.ski.name}
          </strong>
          : where does it go? Point on the snow, or move the guess.
        </p>
        <BigSlider
          label="Guess"
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
          Show the answer
        </button>
      </section>
    );
  }
  const next = nextPlace();
  const miss = missNow();
  return (
    <section class="guess-bar" aria-label="Guess first" role="status">
      <p>
        {asked.ski.mark.letter} {asked.ski.name} {asked.slides ? 'slides' : 'turns'} on {metres(asked.path)}
        {guess !== null && miss !== null && (
          <>
            ; the room said {metres(guess)}. <strong>Missed by {metres(miss)}</strong> at the end of the arc
          </>
        )}
        .
      </p>
      {next !== null && (
        <button type="button" class="primary" onClick={() => ask(next)}>
          Now guess {boardAnswers.value[next]!.ski.mark.letter}
        </button>
      )}
      <button type="button" onClick={() => ask(askedPlace())}>
        Guess again
      </button>
      <button type="button" onClick={forget}>
        Done
      </button>
    </section>
  );
}
