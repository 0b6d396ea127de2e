import { bench, describe } from 'vitest';
import { buildRadiusTable, grooveSolver } from '../../../core/carve/index.ts';
import { hardness, radians, slalomSki } from './demo.ts';

const solver = grooveSolver(slalomSki);
const conditions = { edgeAngle: radians(50), load: 1200, hardness: hardness(1), fore: 0 };
const answer = solver.solve({ ...conditions, load: 1100 });

describe('one equilibrium, 120 elements, torsion and groove', () => {
  bench('cold', () => {
    solver.solve(conditions);
  });
  bench('from a neighbouring answer', () => {
    if (answer.ok) solver.solve(conditions, { from: answer });
  });
});

/** On soft snow most points are sought along the path on which the snow's memory sets in. */
describe('a radius table of 24 edge angles and 12 loads, doubtful cells resolved more finely', () => {
  for (const [snow, newtonPerMm3] of [
    ['hard', 10],
    ['groomed', 1],
    ['soft', 0.1],
  ] as const) {
    bench(
      `${snow} snow, ${newtonPerMm3} N/mm³`,
      () => {
        buildRadiusTable(slalomSki, hardness(newtonPerMm3));
      },
      { iterations: 5, time: 0, warmupIterations: 1, warmupTime: 0 },
    );
  }
});
