import { describe, expect, it } from 'vitest';
import { checkWorking, type Working } from '../../../core/working/index.ts';
import { explained } from './examples/index.ts';

/** How much a planted fault is off: a hundredth, or a thousandth of a unit where there is nothing to take it of. */
const off = (value: number) => value * 1.01 + (value === 0 ? 1e-3 : 0);

/** A nought in a formula is a floor, as in max(0, x): it says nothing while x is above it. */
const isFloor = (number: string) => Number(number) === 0;

/** The working with each number of its formula or of one side of its balance off in turn. */
function wrongConstants(working: Working): [what: string, wrong: Working][] {
  const numbers = (text: string) =>
    [...text.matchAll(/(?<![A-Za-z0-9_.])\d+(?:\.\d+)?(?:e-?\d+)?/g)]
      .filter(({ 0: found }) => !isFloor(found))
      .map(({ 0: found, index }) => ({
        found: `${found} at ${index}`,
        text: `${text.slice(0, index)}${off(Number(found))}${text.slice(index + found.length)}`,
      }));
  const { formula, solved } = working;
  return [
    ...numbers(formula).map(({ found, text }): [string, Working] => [
      `${found} in ${formula}`,
      { ...working, formula: text },
    ]),
    ...(solved
      ? (['left', 'right'] as const).flatMap(side =>
          numbers(solved[side]).map(({ found, text }): [string, Working] => [
            `${found} in ${solved[side]}`,
            { ...working, solved: { ...solved, [side]: text } },
          ]),
        )
      : []),
  ];
}

/** The working with each of its inputs off in turn, where it is in the formula or the balance at all. */
function wrongInputs(working: Working): [what: string, wrong: Working][] {
  const text = [working.formula, working.solved?.left, working.solved?.right].join(' ; ');
  return working.inputs
    .filter(({ name }) => new RegExp(`(?<![A-Za-z0-9_])${name}(?![A-Za-z0-9_])`).test(text))
    .map(({ name }): [string, Working] => [
      name,
      {
        ...working,
        inputs: working.inputs.map(each => (each.name === name ? { ...each, value: off(each.value) } : each)),
      },
    ]);
}

const wrongResult = (working: Working): [string, Working] => [
  'the result',
  { ...working, result: { ...working.result, value: off(working.result.value) } },
];

describe('a fault planted in the example of every working is caught', () => {
  it.each(explained)('$room: $name', ({ workings }) => {
    const caught = new Map<string, boolean>();
    for (const working of workings()) {
      const planted = [wrongResult(working), ...wrongConstants(working), ...wrongInputs(working)];
      for (const [what, wrong] of planted) {
        const fault = `${working.key}: ${what}`;
        // One example may hide what another shows: a lever of no length, a term that cancels.
        caught.set(fault, (caught.get(fault) ?? false) || checkWorking(wrong).length > 0);
      }
    }
    expect(caught.size).toBeGreaterThan(0);
    expect([...caught].filter(([, found]) => !found).map(([fault]) => fault)).toEqual([]);
  });
});
