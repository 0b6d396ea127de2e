// @module-tag slow
import { expect, test } from 'vitest';
import { quickestRun, rhythm } from '../../../core/line/index.ts';
import { conditionsOf, SLALOM, slalom } from './questions.ts';

const conditions = conditionsOf({ ...SLALOM, slopeDeg: 15 });
/** Twenty gates, with two turns to the same side in a row. */
const poles = Array.from({ length: 20 }, (_, i) => {
  const right = (i + (i >= 12 ? 1 : 0)) % 2 === 0 ? 1 : -1;
  return { x: 1.6 * right, y: (i + 1) * 10 + (i >= 12 ? 4 : 0), turn: -right as 1 | -1 };
});

test('a long set, begun from the answer for its first gates, is one solved whole', {
  timeout: 240_000,
}, () => {
  const found = quickestRun({ conditions, poles, startSpeed: 9 });
  if (!found.ok) throw new Error(`${found.reason}: ${found.limit}`);
  expect(found.answer.violation).toBeLessThan(1e-6);
  expect(found.poleNodes).toHaveLength(20);
  for (const [i, node] of found.poleNodes.entries()) {
    const outside = -poles[i].turn * (found.run.x[node] - poles[i].x);
    expect(outside, `gate ${i + 1}`).toBeGreaterThan(0.25);
  }
  // Steady gates in the middle take what the rhythm takes.
  const even = rhythm({ ...slalom(conditions) }, { stages: 16, beginnings: 2 });
  if (!even.ok) throw new Error(even.limit);
  const gate = (i: number) => found.run.t[found.poleNodes[i]] - found.run.t[found.poleNodes[i - 1]];
  expect(Math.abs((gate(8) + gate(9)) / 2 / even.secondsPerGate - 1)).toBeLessThan(0.03);
});
