import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { expect, it } from 'vitest';
import { HALF_BAND, ROW } from '../../../core/carve/ski-stiffness.ts';
import { BorderedBand } from '../../../core/numeric/index.ts';

const REACH = BorderedBand.halfBand;

it('is as wide as the stiffness of a ski', () => {
  expect([HALF_BAND, ROW]).toEqual([REACH, 2 * REACH + 1]);
});

it('solves a banded system with columns that leave the band as a dense solver does', () => {
  const entry = fc.double({ min: -1, max: 1, noNaN: true });
  const column = fc.record({
    rows: fc.array(entry, { minLength: 30, maxLength: 30 }),
    at: fc.nat(29),
    weight: entry,
  });
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 30 }),
      fc.array(entry, { minLength: 30 * 11, maxLength: 30 * 11 }),
      fc.array(column, { maxLength: 3 }),
      (size, entries, columns) => {
        const solver = new BorderedBand(size, 3);
        const dense = Array.from({ length: size }, () => new Array<number>(size).fill(0));
        for (let row = 0; row < size; row++) {
          for (let c = Math.max(0, row - REACH); c <= Math.min(size - 1, row + REACH); c++) {
            // Dominated by its diagonal, as the elimination takes for granted.
            const value = entries[row * 11 + c - row + REACH] + (c === row ? 14 : 0);
            solver.band[row * (2 * REACH + 1) + c - row + REACH] = value;
            dense[row][c] = value;
          }
        }
        for (const { rows, at, weight } of columns) {
          const first = at % size;
          const second = (at + 7) % size;
          const opened = solver.openColumn(first, 0.1 * weight, second, 0.05);
          for (let row = 0; row < size; row++) {
            opened![row] = rows[row];
            dense[row][first] += rows[row] * 0.1 * weight;
            dense[row][second] += rows[row] * 0.05;
          }
        }
        expect(solver.factor()).toBe(true);
        const right = Float64Array.from({ length: size }, (_, i) => Math.sin(1 + i));
        const expected = lusolve(dense, [...right]) as number[][];
        solver.solve(right);
        for (let i = 0; i < size; i++) expect(right[i]).toBeCloseTo(expected[i][0], 9);
      },
    ),
    { numRuns: 60 },
  );
});

it('takes no more columns than it has room for, and says when a pivot vanishes', () => {
  const solver = new BorderedBand(4, 1);
  expect(solver.openColumn(0, 1, 1, 1)).not.toBeNull();
  expect(solver.openColumn(0, 1, 1, 1)).toBeNull();
  solver.clearColumns();
  expect(solver.openColumn(0, 1, 1, 1)).not.toBeNull();
  expect(solver.factor()).toBe(false);
});
