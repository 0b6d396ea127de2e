import { beforeEach, expect, test } from 'vitest';
import { boardAnswers } from '../../../../renderer/answers/board.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import { addEntries, changeBoard, EMPTY_PROJECT, edit, load } from '../../../../renderer/state/index.ts';
import { ask, forget, NEUTRAL_RADIUS, place, show } from '../../../../renderer/views/board/guess.ts';
import { askedAnswer, layoutRadius, missNow, nextPlace } from '../../../../renderer/views/board/guessing.ts';

beforeEach(() => {
  forget();
  load(EMPTY_PROJECT);
  edit('Rack', addEntries(demoPairs.map((pair, i) => ({ id: `demo-${i}`, pair, saved: pair }))));
});

test('each ski is missed by its own guess', () => {
  const [a, b] = boardAnswers.value;
  ask();
  expect(askedAnswer()).toBe(a);
  place(a!.moment.radius * 1.5);
  expect(missNow()).toBeNull();
  show();
  const first = missNow()!;
  expect(first).toBeGreaterThan(0.5);
  ask(nextPlace()!);
  expect(askedAnswer()).toBe(b);
  expect(nextPlace()).toBeNull();
  place(b!.moment.radius);
  show();
  expect(missNow()).toBeLessThan(0.1);
});

test('the snow is laid out without the answer until it is known', () => {
  ask();
  expect(layoutRadius()).toBe(NEUTRAL_RADIUS);
  place(9);
  expect(layoutRadius()).toBe(9);
  show();
  expect(layoutRadius()).toBe(boardAnswers.value[0]!.moment.radius);
});

test('one ski on the board is the one guessed', () => {
  changeBoard('One ski', { sideBySide: false });
  ask();
  expect(askedAnswer()).toBe(boardAnswers.value[0]);
  expect(nextPlace()).toBeNull();
});
