import { bench, describe } from 'vitest';
import {
  bankedTurns,
  evenSlope,
  linkedTurns,
  type Run,
  solveRun,
  tableTurn,
} from '../../../core/run/index.ts';
import { demoTable } from './demo-table.ts';

const DEGREE = Math.PI / 180;

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

  const draft = found(solveRun(of(8), { draft: true }));

  bench('10 s, from nothing', () => {
    found(solveRun(of(8, 1.06)));
  });

  bench('10 s, from a neighbour: 1° more edge', () => {
    found(solveRun(of(8, 1.05 + DEGREE), {}, ten));
  });

  bench('10 s, from a neighbour: 1 km/h more', () => {
    found(solveRun({ ...of(8), startSpeed: 7 + 1 / 3.6 }, {}, ten));
  });

  bench('10 s, along a slider, a draft: 1° more edge', () => {
    found(solveRun(of(8, 1.05 + DEGREE), { draft: true }, draft));
  });

  bench('10 s, along a slider, a draft: 1 km/h more', () => {
    found(solveRun({ ...of(8), startSpeed: 7 + 1 / 3.6 }, { draft: true }, draft));
  });

  const once = { iterations: 1, time: 0, warmupIterations: 0 };
  bench('60 s, with progress', () => void found(solveRun(of(48), { onProgress: () => {} })), once);
  bench('60 s, in steps twice as long', () => void found(solveRun(of(48), { step: 0.04 })), once);
  bench('60 s, a draft', () => void found(solveRun(of(48), { draft: true })), once);

  bench(
    '40 banked turns on 8°',
    () => {
      const profile = evenSlope(8 * DEGREE);
      found(solveRun({ ...skier, profile, programme: bankedTurns(60 * DEGREE, 40), startSpeed: 5 }));
    },
    once,
  );
});
