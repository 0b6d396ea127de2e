import { beforeEach, expect, test } from 'vitest';
import {
  ask,
  forget,
  guessed,
  guessPhase,
  MAX_GUESS,
  place,
  revealed,
  show,
} from '../../../../renderer/views/board/guess.ts';

beforeEach(forget);

test('the answer stays hidden until a guess is placed', () => {
  ask();
  expect(show()).toBe(false);
  expect(guessPhase.value).toBe('asking');
  place(12.34);
  expect(guessed.value).toBe(12.3);
  expect(show()).toBe(true);
  expect(guessPhase.value).toBe('shown');
});

test('asking again takes the last guess off the snow', () => {
  ask();
  place(500);
  expect(guessed.value).toBe(MAX_GUESS);
  show();
  ask();
  expect(guessed.value).toBeNull();
});

test('the ski not guessed yet stays hidden, the one before it stays shown', () => {
  expect([revealed(0), revealed(1)]).toEqual([true, true]);
  ask();
  expect([revealed(0), revealed(1)]).toEqual([false, false]);
  place(10);
  show();
  expect([revealed(0), revealed(1)]).toEqual([true, false]);
  ask(1);
  expect([revealed(0), revealed(1)]).toEqual([true, false]);
  expect(show()).toBe(false);
  place(20);
  show();
  expect([revealed(0), revealed(1)]).toEqual([true, true]);
});
