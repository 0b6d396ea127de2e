import { expect, test } from 'vitest';
import { carvingSkiOf, grooveSolver } from '../../../core/carve/index.ts';
import { skiOf } from '../../../core/pair/index.ts';
import { bendQuestions, bendTable } from '../../../renderer/answers/bends.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';

const pair = demoPairs.find(each => each.bending)!;
const carving = carvingSkiOf(skiOf(pair));
if (!carving.ok) throw new Error(JSON.stringify(carving.reason));
const solver = grooveSolver(carving.ski);
const solve = (edgeAngle: number, load: number) => {
  const answer = solver.solve({ edgeAngle, load, hardness: 1e9, fore: 0 });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
};
const answers = bendQuestions(1e9, 0).map(each => solver.solve(each));

test('the table gives back what was solved', () => {
  const table = bendTable(answers)!;
  for (const answer of [answers[0]!, answers[13]!, answers.at(-1)!]) {
    if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
    const { edgeAngle, load } = answer.conditions;
    const bend = table.at(edgeAngle, load);
    expect(Array.from(bend.height)).toEqual(Array.from(answer.height, h => expect.closeTo(h, 9)));
  }
});

test('between the points it stays within a few per cent of a solved bend', () => {
  const table = bendTable(answers)!;
  const exact = solve(47 * (Math.PI / 180), 1400);
  const bend = table.at(47 * (Math.PI / 180), 1400);
  const range = (of: ArrayLike<number>) => Math.max(...Array.from(of)) - Math.min(...Array.from(of));
  expect(Math.abs(range(bend.height) / range(exact.height) - 1)).toBeLessThan(0.05);
});

test('every question writes into the same arrays', () => {
  const table = bendTable(answers)!;
  expect(table.at(0.5, 900)).toBe(table.at(1, 1500));
});

test('a table with a hole is none', () => {
  expect(
    bendTable([
      ...answers.slice(1),
      { ok: false, conditions: bendQuestions(1e9, 0)[0]!, reason: { key: 'line.runStopped' } },
    ]),
  ).toBeNull();
  expect(bendTable(answers.slice(1))).toBeNull();
});
