import { bench, describe } from 'vitest';
import { quickestRun, rhythm } from '../../../core/line/index.ts';
import { conditionsOf, giant, SLALOM, slalom } from './questions.ts';

const conditions = conditionsOf(SLALOM);
const other = { ...conditions, friction: 0.045 };
const cold = rhythm(slalom());
const poles = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const right = i % 2 === 0 ? 1 : -1;
    return { x: 1.6 * right, y: (i + 1) * 10, turn: -right as 1 | -1 };
  });
const set = { conditions, poles: poles(10), startSpeed: 9 };
const ten = quickestRun(set);

describe('rhythm: 48 stages between two gates', () => {
  bench('slalom, from scratch', () => {
    rhythm(slalom());
  });
  bench('giant slalom, from scratch', () => {
    rhythm(giant());
  });
  bench('slalom, from a neighbour', () => {
    rhythm(slalom(other), { from: cold.ok ? cold : undefined });
  });
});

describe('set: 16 stages between two gates', () => {
  bench('10 gates, from scratch', () => void quickestRun(set), {
    iterations: 2,
    time: 1,
    warmupIterations: 0,
  });
  bench(
    '10 gates, from a neighbouring ski',
    () => void quickestRun({ ...set, conditions: other }, { from: ten.ok ? [ten] : [] }),
    { iterations: 2, time: 1, warmupIterations: 0 },
  );

  const once = { iterations: 1, time: 0, warmupIterations: 0 };
  const long = { ...set, poles: poles(60) };
  let sixty: ReturnType<typeof quickestRun> | null = null;
  bench(
    '60 gates, from scratch',
    () => {
      sixty = quickestRun(long);
    },
    once,
  );
  bench(
    '60 gates, from a neighbouring ski',
    () => void quickestRun({ ...long, conditions: other }, { from: sixty?.ok ? [sixty] : [] }),
    once,
  );
});
