import { type BoardAnswer, boardAnswers, type Place } from '../../answers/index.ts';
import { t } from '../../state/index.ts';
import { missOf, startOf } from './arc-math.ts';
import { guessed, guessPlace, NEUTRAL_RADIUS, revealed } from './guess.ts';

/** The ski being guessed; with one ski on the board that one. */
export function askedPlace(): Place {
  return boardAnswers.value.length > 1 ? guessPlace.value : 0;
}

export const askedAnswer = (): BoardAnswer | undefined => boardAnswers.value[askedPlace()];

/** Whether another ski waits for its guess once this one is shown. */
export const nextPlace = (): Place | null => (askedPlace() === 0 && boardAnswers.value.length > 1 ? 1 : null);

/** Radius the common start of the arcs is laid out for: the first ski's once the room may know it, m. */
export function layoutRadius(): number {
  const first = boardAnswers.value[0];
  return first && revealed(0) ? first.path : (guessed.value ?? NEUTRAL_RADIUS);
}

/** By how much the room missed the ski it guessed, m, at the end of the arcs on the snow; null before. */
export function missNow(): number | null {
  const answer = askedAnswer();
  const guess = guessed.value;
  if (!answer || guess === null || !revealed(askedPlace())) return null;
  return missOf(answer.path, guess, startOf(layoutRadius()));
}

/** What the guess is called on the snow. */
export const guessName = (): string =>
  boardAnswers.value.length > 1
    ? t('board.guessFor', { letter: askedAnswer()!.ski.mark.letter })
    : t('board.aGuess');
