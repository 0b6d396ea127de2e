import { signal } from '@preact/signals';

/** Off: the answer is there. Asking: it is hidden until the room's guess lies on the snow. Shown: both. */
export type GuessPhase = 'off' | 'asking' | 'shown';

export const MIN_GUESS = 2;
export const MAX_GUESS = 60;
/** Where the guess stands before the room has said anything, and what the snow is framed for, m. */
export const NEUTRAL_RADIUS = 20;

export const guessPhase = signal<GuessPhase>('off');
/** The room's guess, m; null until it is placed. */
export const guessed = signal<number | null>(null);

export function ask(): void {
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
  guessPhase.value = 'off';
  guessed.value = null;
}
