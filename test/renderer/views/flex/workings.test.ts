import { afterEach, describe, expect, test } from 'vitest';
import { checkWorking } from '../../../../core/working/index.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import { PAIR_MARKS, ski } from '../../../../renderer/state/index.ts';
import { bendable } from '../../../../renderer/views/flex/beams.ts';
import { foreMm, frontInMm, rearInMm, rest, setupOf } from '../../../../renderer/views/flex/bench.ts';
import {
  benchDeflection,
  frequency,
  tableDeflection,
  tableLoads,
} from '../../../../renderer/views/flex/live-workings.ts';
import { pressedShape } from '../../../../renderer/views/flex/pressed.ts';
import { asStations, stationsOffBy } from '../../../../renderer/views/flex/stiffness-edits.ts';

const [larch] = bendable(
  demoPairs
    .slice(0, 1)
    .map(pair => ({ id: 'x', name: pair.name, pair, ski: ski(pair), mark: PAIR_MARKS[0], active: true })),
);

afterEach(() => {
  rest.value = 'bench';
  foreMm.value = 0;
  rearInMm.value = 0;
  frontInMm.value = 0;
});

describe('flex view', () => {
  test('its own workings hold', () => {
    foreMm.value = 40;
    rearInMm.value = 100;
    const all = [
      benchDeflection(larch, 300),
      tableDeflection(larch, 60),
      ...tableLoads(larch),
      frequency(larch, 27, 'bending 1'),
    ];
    for (const working of all) expect(checkWorking(working)).toEqual([]);
  });

  test('supports carry the ski: the base stands on them free and pressed', () => {
    rearInMm.value = 150;
    frontInMm.value = 80;
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
