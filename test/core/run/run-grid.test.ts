// @module-tag slow
/** Runs of every kind and to the border of what is accepted: solved and sound, or refused by the limit that cannot be kept. */
import { describe, expect, test } from 'vitest';
import { bankedTurns, cosineTurn, evenSlope, solveRun } from '../../../core/run/index.ts';
import { faultsOf, gridOfRuns, randomRuns } from './run-cases.ts';

const EVERY = 48;

describe('runs are solved, or refused by name', () => {
  const cases = [...gridOfRuns().filter((_, i) => i % EVERY === EVERY / 2), ...randomRuns(11, 7)];

  test.each(cases.map(each => [each.name, each] as const))('%s', { timeout: 240_000 }, (_, each) => {
    expect(faultsOf(each, solveRun(each.conditions, { outputStep: 0.02 }))).toEqual([]);
  });
});

describe('banked turns', () => {
  const conditions = {
    turn: cosineTurn(13),
    profile: evenSlope(0),
    mass: 75,
    friction: 0.05,
    dragArea: 0.45,
    airDensity: 1.1,
    programme: bankedTurns(1, 2),
  };

  test('too fast for a point on the skis to balance, a skier on a leg rides them all', () => {
    const run = solveRun({ ...conditions, startSpeed: 12.5 });
    if (!run.ok) throw new Error(run.limit);
    expect(run.track.summary.turns).toBe(2);
    expect(run.track.summary.end).toBe('programme over');
  });

  test('a skier who stands still before the first turn is round is told so, and when', () => {
    const run = solveRun({ ...conditions, startSpeed: 1 });
    if (run.ok) throw new Error('solved');
    expect(run.limit).toBe('speed');
    expect(run.at).toBeGreaterThan(1);
    expect(run.at).toBeLessThan(3);
  });
});
