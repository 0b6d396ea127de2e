import { afterEach, describe, expect, test } from 'vitest';
import { checkWorking } from '../../../core/working/index.ts';
import { bendable } from '../../../renderer/answers/beam.ts';
import { rest, setupOf } from '../../../renderer/answers/bench-setup.ts';
import {
  benchDeflection,
  frequency,
  tableDeflection,
  tableLoads,
} from '../../../renderer/answers/bench-workings.ts';
import { pressedShape } from '../../../renderer/answers/pressed.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import {
  EMPTY_PROJECT,
  load,
  PAIR_MARKS,
  settle,
  ski,
  undo,
  undoLabel,
} from '../../../renderer/state/index.ts';
import { moveBench } from '../../../renderer/views/flex/bench.ts';
import { asStations, stationsOffBy } from '../../../renderer/views/flex/stiffness-edits.ts';

const [larch] = bendable(
  demoPairs
    .slice(0, 1)
    .map(pair => ({ id: 'x', name: pair.name, pair, ski: ski(pair), mark: PAIR_MARKS[0], active: true })),
);

afterEach(() => {
  rest.value = 'bench';
  load(EMPTY_PROJECT);
});

describe('flex view', () => {
  test('its own workings hold', () => {
    moveBench.press(40);
    moveBench.rear(100);
    const all = [
      benchDeflection(larch, 300),
      tableDeflection(larch, 60),
      ...tableLoads(larch),
      frequency(larch, 27, 'bending 1'),
    ];
    for (const working of all) expect(checkWorking(working)).toEqual([]);
  });

  test('press and supports are moved in steps that undo takes back', () => {
    const at = () => setupOf(larch.ski, 0);
    const before = at();
    moveBench.press(25);
    moveBench.press(60);
    settle();
    moveBench.front(90);
    expect(at().at - before.at).toBeCloseTo(0.06, 9);
    expect(before.front - at().front).toBeCloseTo(0.09, 9);
    expect(undoLabel.value).toBe('Front support');
    undo();
    expect(at().front).toBe(before.front);
    expect(undoLabel.value).toBe('Place of the press');
    undo();
    expect(at()).toEqual(before);
  });

  test('supports carry the ski: the base stands on them free and pressed', () => {
    moveBench.rear(150);
    moveBench.front(80);
    const setup = setupOf(larch.ski, 250);
    const { x, free, pressed } = pressedShape(larch, setup, 'bench');
    for (const station of [setup.rear, setup.front]) {
      const at = x.findIndex(each => Math.abs(each - station) < 1e-9);
      expect(free[at]).toBeCloseTo(0, 9);
      expect(pressed[at]).toBeCloseTo(0, 9);
    }
  });

  test('bench and table agree until the base touches', () => {
    rest.value = 'table';
    const setup = setupOf(larch.ski, 10);
    const table = pressedShape(larch, setup, 'table').deflection;
    expect(table / pressedShape(larch, setup, 'bench').deflection).toBeCloseTo(1, 6);
  });

  test('a uniform profile turned into stations stays what it was', () => {
    expect(stationsOffBy(() => 200, 1360)).toBeLessThan(1e-12);
    expect(asStations(() => 200, 1360)).toMatchObject({ kind: 'stations' });
  });
});
