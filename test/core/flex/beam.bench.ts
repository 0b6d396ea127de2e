import { lusolve } from 'mathjs';
import { bench, describe } from 'vitest';
import {
  BENDING_HALF,
  bendingMatrix,
  bendingOf,
  gaussValues,
  meshThrough,
  solveSupported,
} from '../../../core/flex/index.ts';
import { prescribe, symmetricBand } from '../../../core/numeric/index.ts';
import { denseRows } from './dense.ts';
import { invented } from './ski.ts';

// Wanted at 120 elements: assembly and solution under 0.2 ms median, at least 50 times faster than the dense solver.
const profile = bendingOf(invented())!;
const x = meshThrough(0, 1.36, [0.64], 120);
const values = gaussValues(profile, x);
const band = symmetricBand(2 * x.length, BENDING_HALF);
const load = new Float64Array(2 * x.length);
const supports = [
  [0, 0],
  [2 * x.length - 2, 0],
] as const;

const dense = bendingMatrix(x, values);
for (const [index, value] of supports) prescribe(dense, null, index, value);
const rows = denseRows(dense);
const right = Array.from(load, (_, i) => (i === 112 ? 100 : 0));

describe('beam of 120 elements', () => {
  bench('assemble and solve, banded', () => {
    gaussValues(profile, x, values);
    band.data.fill(0);
    load.fill(0);
    load[112] = 100;
    solveSupported(bendingMatrix(x, values, band), load, supports);
  });

  bench(
    'solve only, mathjs lusolve',
    () => {
      lusolve(rows, right);
    },
    { time: 2000, iterations: 3, warmupIterations: 1 },
  );
});
