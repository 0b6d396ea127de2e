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

describe('a radius table of 24 edge angles and 12 loads', () => {
  bench(
    'groomed snow',
    () => {
      buildRadiusTable(slalomSki, hardness(1));
    },
    { iterations: 5 },
  );
});
