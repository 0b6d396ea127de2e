import { beforeEach, describe, expect, it } from 'vitest';
import type { Pair } from '../../../core/pair/index.ts';
import { editionText } from '../../../core/rules/index.ts';
import { enteredRack, leftOut } from '../../../renderer/answers/contenders.ts';
import { setJobs } from '../../../renderer/answers/jobs/set-jobs.ts';
import { scope, scopeOwner, setQuestion, turnModel } from '../../../renderer/answers/set-question.ts';
import { demoPairs, demoSets } from '../../../renderer/demo/index.ts';
import { addEntries, chooseOnly, EMPTY_PROJECT, load, project } from '../../../renderer/state/index.ts';

const superG: Pair = {
  format: 'turnwright.pair',
  version: 1,
  name: 'Cedar 210',
  discipline: 'SG',
  lengthMm: 2100,
  contactLengthMm: 1850,
  tipWidthMm: 95,
  waistWidthMm: 65,
  tailWidthMm: 79,
};
const { discipline: _, ...unsaid } = { ...superG, name: 'Unsaid', tipWidthMm: 100 };

beforeEach(() => {
  const pairs = [...demoPairs, superG, unsaid as Pair];
  load({
    ...addEntries(pairs.map((pair, i) => ({ id: `p${i}`, pair, saved: pair })))(EMPTY_PROJECT),
    course: demoSets.GS,
  });
  turnModel.value = 'cosine';
  scope.value = 'rack';
});

describe('ranking the rack', () => {
  it('enters the pairs of the set’s discipline and those that state none', () => {
    const names = enteredRack.value.pairs.map(({ pair }) => pair.name);
    const giants = demoPairs.filter(pair => pair.discipline === 'GS').map(pair => pair.name);
    expect(names).toEqual([...giants, 'Unsaid']);
    expect(leftOut.value).toBe(demoPairs.length + 2 - names.length);
  });

  it('enters the pairs of one owner where asked', () => {
    scope.value = 'owner';
    const mine = addEntries(
      demoPairs.slice(0, 2).map((pair, i) => {
        const own = { ...pair, discipline: 'GS', owner: 'Mia' } as Pair;
        return { id: `m${i}`, pair: own, saved: own };
      }),
    )(project.value);
    load({ ...chooseOnly(['m0'])(mine), course: demoSets.GS });
    expect(scopeOwner.value).toBe('Mia');
    expect(enteredRack.value.pairs.map(({ id }) => id)).toEqual(['m0', 'm1']);
  });

  it('answers as plain data, first times on the way, each pair under its own id', () => {
    const pairs = enteredRack.value.pairs.slice(0, 2);
    const soFar: unknown[] = [];
    const shares: number[] = [];
    const answer = structuredClone(
      setJobs.quickestRuns(
        { ...setQuestion.value, gates: demoSets.GS.gates.slice(0, 4), pairs },
        (share, known) => {
          shares.push(share);
          if (known !== undefined) soFar.push(structuredClone(known));
        },
      ),
    );
    expect(shares.at(-1)).toBe(1);
    expect(soFar).toHaveLength(2);
    expect(soFar.at(-1)).toEqual(pairs.map(({ id }) => ({ id, seconds: expect.any(Number) })));
    expect(answer.pairs.map(({ id }) => id).toSorted()).toEqual(pairs.map(({ id }) => id).toSorted());
    for (const { seconds, gates, run, worth } of answer.pairs) {
      expect(gates).toHaveLength(4);
      expect(gates.at(-1)!.seconds).toBeLessThan(seconds);
      expect(gates.reduce((sum, { split }) => sum + split, 0)).toBeCloseTo(gates.at(-1)!.seconds, 9);
      expect(run.t.at(-1)).toBeCloseTo(seconds, 9);
      expect(worth.find(({ input }) => input === 'friction')!.seconds).toBeLessThan(0);
    }
  });

  it('does not pick a pair that fails the rules of who races', () => {
    const pairs = enteredRack.value.pairs
      .slice(0, 1)
      .map(pair => ({ ...pair, failedRules: [editionText('radius at least')] }));
    const { pick, because } = setJobs.quickestRuns(
      { ...setQuestion.value, gates: demoSets.GS.gates.slice(0, 2), pairs },
      () => {},
    );
    expect(pick).toBeNull();
    expect(because.map(({ key }) => key)).toContain('line.barred');
  });

  it('tells gates that cannot be run by field, as plain data', () => {
    const pairs = enteredRack.value.pairs.slice(0, 1);
    const gates = demoSets.GS.gates.slice(0, 3).map((gate, i) => ({ ...gate, y: i === 2 ? 1 : gate.y }));
    const answer = structuredClone(setJobs.quickestRuns({ ...setQuestion.value, gates, pairs }, () => {}));
    expect(answer.pairs).toEqual([]);
    expect(answer.fault).toMatchObject({ field: 'gates[3]', because: { key: 'line.gateFurtherDown' } });
  });
});
