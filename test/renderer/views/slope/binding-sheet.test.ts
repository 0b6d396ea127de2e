import { expect, test } from 'vitest';
import { bindingLoads } from '../../../../core/boot/index.ts';
import { USUAL } from '../../../../core/conditions/index.ts';
import type { PairRun } from '../../../../renderer/answers/runs.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import { EMPTY_PROJECT, load, PAIR_MARKS, ski } from '../../../../renderer/state/index.ts';
import { loadsOf } from '../../../../renderer/views/slope/binding-sheet.tsx';

load(EMPTY_PROJECT);
const pair = demoPairs[0]!;

test('the loads are those of the outer ski at the sole, row by row', () => {
  const run = {
    pair: { id: 'a', name: pair.name, pair, ski: ski(pair), mark: PAIR_MARKS[0]!, active: true },
    plan: { friction: 0.05, outerShare: USUAL.outerShare },
    track: {
      load: Float64Array.of(900, 0),
      lean: Float64Array.of(-0.5, 0),
      edge: Float64Array.of(-0.8, 0.1),
    },
  } as unknown as PairRun;
  const { waistWidth, standingHeight } = ski(pair);
  const first = bindingLoads(
    { load: USUAL.outerShare * 900, lean: -0.5, edgeAngle: -0.8 },
    { height: standingHeight, halfWaist: waistWidth / 2, friction: 0.05 },
  );
  const columns = loadsOf(run);
  for (const name of ['normal', 'sideways', 'foreAft', 'roll', 'pitch', 'yaw'] as const) {
    expect(columns[name][0], name).toBeCloseTo(first[name], 9);
    expect(Math.abs(columns[name][1]!), name).toBe(0);
  }
  expect(loadsOf(run)).toBe(columns);
});
