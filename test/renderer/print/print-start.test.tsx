import { renderToString } from 'preact-render-to-string';
import { beforeAll, describe, expect, test } from 'vitest';
import { setJobs } from '../../../renderer/answers/jobs/set-jobs.ts';
import { setQuestion } from '../../../renderer/answers/set-question.ts';
import { demoPairs, demoSets } from '../../../renderer/demo/index.ts';
import { StartSheet } from '../../../renderer/print/print-start.tsx';
import { addEntries, chooseOnly, EMPTY_PROJECT, load } from '../../../renderer/state/index.ts';

/** Texts of a page, tags left out. */
const wordsOf = (html: string) => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

describe('the page for the start', () => {
  let words = '';
  let pickless = '';

  beforeAll(() => {
    const [one, other] = demoPairs;
    const entries = [one!, other!].map((pair, i) => ({ id: `p${i}`, pair, saved: pair }));
    const course = { ...demoSets.SL, gates: demoSets.SL.gates.slice(0, 3) };
    load({ ...chooseOnly(['p0', 'p1'])(addEntries(entries)(EMPTY_PROJECT)), course });
    const pairs = entries.map(({ id, pair }) => ({
      id,
      pair,
      turn: { sidecutRadius: 13 },
      failedRules: [],
    }));
    const answer = setJobs.quickestRuns({ ...setQuestion.value, pairs }, () => {});
    pickless = wordsOf(renderToString(<StartSheet answer={{ ...answer, pick: null }} />));
    words = wordsOf(renderToString(<StartSheet answer={{ ...answer, pick: answer.pairs[0]!.id }} />));
  });

  test('names the set, the hill, the snow and the skier', () => {
    expect(words).toContain('Pala Ostrelle');
    expect(words).toMatch(/slalom, 3 gates, \d{4}-\d\d-\d\d · demo/);
    expect(words).toMatch(/Hill: 20\.0\s?°\. Start: 30\skm\/h as the run begins\. Snow: groomed/);
    expect(words).toMatch(/Skier: 48\.?\d* kg with equipment/);
  });

  test('says the pick with its ±, or that there is none', () => {
    expect(words).toMatch(/The pick \w+ \d+ \d\.\d\d ± \d\.\d\d s/);
    expect(pickless).toContain('No pick');
    expect(pickless).not.toContain('The pick');
  });

  test('tells what a tenth is made of, the tightest turns and the cautions', () => {
    expect(words).toMatch(/drag area \(suit, posture\) −0\.05 m² −0\.\d\d s/);
    expect(words).toMatch(/Gate 2 \d\.\d\sm \d\d\skm\/h/);
    expect(words).toContain('no binding setting');
  });
});
