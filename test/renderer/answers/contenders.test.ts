import { beforeEach, describe, expect, it } from 'vitest';
import { fillCourseConditions } from '../../../core/course/index.ts';
import type { Pair } from '../../../core/pair/index.ts';
import { enteredRack, leftOut } from '../../../renderer/answers/contenders.ts';
import { setJobs } from '../../../renderer/answers/jobs/set-jobs.ts';
import { turnModel } from '../../../renderer/answers/set-question.ts';
import { demoPairs, demoSets } from '../../../renderer/demo/index.ts';
import { addEntries, EMPTY_PROJECT, load } from '../../../renderer/state/index.ts';
import { sureness } from '../../../renderer/views/set/sureness.ts';

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
});

describe('ranking the rack', () => {
  it('enters the pairs of the set’s discipline and those that state none', () => {
    const names = enteredRack.value.pairs.map(pair => pair.name);
    const giants = demoPairs.filter(pair => pair.discipline === 'GS').map(pair => pair.name);
    expect(names).toEqual([...giants, 'Unsaid']);
    expect(leftOut.value).toBe(demoPairs.length + 2 - names.length);
  });

  it('answers as plain data, with progress, each pair under its own id', () => {
    const shares: number[] = [];
    const { pairs } = enteredRack.value;
    const answer = structuredClone(
      setJobs.rankRack(
        {
          pairs,
          gates: demoSets.GS.gates,
          conditions: fillCourseConditions({ startSpeed: 14, holdSpeed: true, slope: 0.29 }),
        },
        share => shares.push(share),
      ),
    );
    expect(shares.at(-1)).toBe(1);
    expect(shares).toHaveLength(pairs.length);
    expect(answer.ranking.pairs).toHaveLength(pairs.length);
    for (const ranked of answer.ranking.pairs) {
      expect(pairs.find(pair => pair.id === answer.pairs[ranked.index].id)?.name).toBe(ranked.name);
    }
    answer.ranking.pairs.forEach((ranked, at) => {
      ranked.report.gates.forEach((gate, i) => {
        if (gate.mode === 'tight arcs') expect(answer.carvedRadii[at][i]).toBeLessThan(gate.neededRadius);
        if (gate.mode === 'carves') expect(answer.carvedRadii[at][i]).toBeCloseTo(gate.neededRadius, 4);
      });
    });
  });

  it('finds a quick line quicker than the drawn one', () => {
    const [pair] = enteredRack.value.pairs;
    const gates = demoSets.GS.gates.slice(0, 6);
    const conditions = fillCourseConditions({ startSpeed: 10, slope: 0.29 });
    const shares: number[] = [];
    const quick = setJobs.quickLineOf({ pair, gates, conditions }, share => shares.push(share));
    if (!quick.ok) throw new Error(JSON.stringify(quick.reason));
    const drawn = setJobs.rankChosen({ pairs: [pair], gates, conditions }, () => {});
    expect(quick.seconds).toBeLessThan(drawn.ranking.pairs[0].report.seconds);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });
});

describe('how sure', () => {
  it('names what was tried', () => {
    expect(sureness('clear', 0, 'metric')).toMatch(/^Clear.*±0\.3\sm across.*±5\skm\/h/);
    expect(sureness('clear', 0, 'imperial')).toMatch(/^Clear.*±1\.0\sft across.*±3\smph/);
    expect(sureness('close', 3, 'metric')).toMatch(/^Close: 3 /);
    expect(sureness('only one pair', 0, 'metric')).toMatch(/second pair/);
  });
});
