import { bench, describe } from 'vitest';
import { evenSlope, linkedTurns, type Run, solveRun, tableTurn } from '../../../core/run/index.ts';
import { demoTable } from './demo-table.ts';

const skier = {
  turn: tableTurn(demoTable()),
  profile: evenSlope(0.22),
  mass: 75,
  friction: 0.04,
  dragArea: 0.45,
  airDensity: 1.1,
  startSpeed: 7,
  legShortest: 0.6,
  legLongest: 1,
};

const of = (turns: number, peakEdge = 1.05) => ({
  ...skier,
  programme: linkedTurns({ peakEdge, period: 2.5, turns }),
});

function found(run: ReturnType<typeof solveRun>): Run {
  if (!run.ok) throw new Error(run.limit);
  return run;
}

describe('a whole run', () => {
  const ten = found(solveRun(of(8)));

  bench('10 s, from nothing', () => {
    found(solveRun(of(8, 1.06)));
  });

  bench('10 s, along a slider', () => {
    found(solveRun(of(8, 1.06), {}, ten));
  });

  bench('10 s, along a slider, on half the nodes', () => {
    found(solveRun(of(8, 1.06), { step: 0.04 }, half));
  });
  const half = found(solveRun(of(8), { step: 0.04 }));

  bench(
    '60 s, with progress',
    () => {
      found(solveRun(of(48), { step: 0.03, onProgress: () => {} }));
    },
    { iterations: 1, time: 0, warmupIterations: 0 },
  );
});
