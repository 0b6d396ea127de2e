import { beforeEach, expect, test } from 'vitest';
import { skiOf } from '../../../core/pair/index.ts';
import { boardAnswers, boardSkis, bySize, putSki } from '../../../renderer/answers/board.ts';
import { radiusOf } from '../../../renderer/answers/sidecut.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import {
  addEntries,
  changeBoard,
  changeConditions,
  EMPTY_PROJECT,
  edit,
  inWords,
  load,
  project,
  settle,
  undo,
} from '../../../renderer/state/index.ts';

beforeEach(() => {
  load(EMPTY_PROJECT);
  edit('Rack', addEntries(demoPairs.map((pair, i) => ({ id: `demo-${i}`, pair, saved: pair }))));
});

test('the ski slider runs from the shortest to the longest', () => {
  const lengths = bySize.value.map(entry => entry.pair.lengthMm);
  expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
  expect(bySize.value).toHaveLength(project.value.rack.length);
});

test('two skis differ, one ski is the first of them', () => {
  const [first, second] = boardSkis.value;
  expect(first!.id).not.toBe(second!.id);
  changeBoard('One ski', { sideBySide: false });
  expect(boardSkis.value.map(each => each.id)).toEqual([first!.id]);
});

test('the answer follows the ski and the edge angle', () => {
  const last = bySize.value.at(-1)!;
  putSki(0, last.id);
  const bare = { ...last.pair };
  delete (bare as { bending?: unknown }).bending;
  load({ ...project.value, rack: [{ id: 'bare', pair: bare, saved: bare }] });
  changeConditions('Edge angle', { edgeDeg: 60 });
  const [answer] = boardAnswers.value;
  expect(inWords(answer!.source)).toContain('cosine rule');
  expect(answer!.moment.radius).toBeCloseTo(radiusOf(bare)! * 0.5, 9);
  expect(answer!.chain()[0]!.result.value).toBeCloseTo(answer!.moment.radius, 6);
  expect(skiOf(bare).bending).toBeNull();
});

test('dragging the ski slider is one step, and undo lays the ski before it back', () => {
  const before = boardSkis.value[1]!.id;
  const others = bySize.value.filter(entry => entry.id !== before && entry.id !== boardSkis.value[0]!.id);
  for (const entry of others) putSki(1, entry.id);
  settle();
  expect(boardSkis.value[1]!.id).toBe(others.at(-1)!.id);
  undo();
  expect(boardSkis.value[1]!.id).toBe(before);
});
