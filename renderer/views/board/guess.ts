import { signal } from '@preact/signals';
import type { Place } from '../../answers/index.ts';

/**
 * Off: the answers are there. Asking: they are hidden until the room's guess lies on the snow. Shown: the guess and
 * its answer; that of a ski not guessed yet stays hidden.
 */
export type GuessPhase = 'off' | 'asking' | 'shown';

export const MIN_GUESS = 2;
export const MAX_GUESS = 60;
/** Where the guess stands before the room has said anything, and what the snow is framed for, m. */
export const NEUTRAL_RADIUS = 20;

export const guessPhase = signal<GuessPhase>('off');
/** The room's guess, m; null until it is placed. */
export const guessed = signal<number | null>(null);

/** The ski that is being guessed: one after the other, the first first. */
export const guessPlace = signal<Place>(0);

/** Whether the room may see the answer for the ski at a place. */
export function revealed(place: Place): boolean {
  if (guessPhase.value === 'off') return true;
  return guessPhase.value === 'asking' ? place < guessPlace.value : place <= guessPlace.value;
}

/** Asks for the ski at a place; what the room has learnt of the one before it stays. */
export function ask(place: Place = 0): void {
  guessPlace.value = place;
  guessPhase.value = 'asking';
  guessed.value = null;
}

export function place(radius: number): void {
  const held = Math.min(MAX_GUESS, Math.max(MIN_GUESS, radius));
  guessed.value = Math.round(held * 10) / 10;
}

/** Shows the answer; nothing happens before there is a guess. */
export function show(): boolean {
  if (guessed.value === null) return false;
  guessPhase.value = 'shown';
  return true;
}

export function forget(): void {
  guessPlace.value = 0;
  guessPhase.value = 'off';
  guessed.value = null;
}
