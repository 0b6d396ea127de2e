import { describe, expect, it } from 'vitest';
import { editions, season2024 } from '../../../core/rules/index.ts';
import {
  category,
  chooseCategory,
  chooseEdition,
  chooseLowerLevel,
  easesLowerLevel,
  edition,
} from '../../../renderer/answers/edition.ts';
import { foundText, limitedText, limitText, sourcesText } from '../../../renderer/answers/found-text.ts';
import { checkOf } from '../../../renderer/answers/rule-check.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import { editionProblems, takeEdition } from '../../../renderer/files/index.ts';
import {
  draftOf,
  EMPTY_PROJECT,
  load,
  project,
  projectFrom,
  redo,
  undo,
} from '../../../renderer/state/index.ts';
import { reading } from '../../core/rules/control-readings.ts';

/** Men, whatever the usual category: what is checked here is the edition. */
const RACED_BY_MEN = { ...EMPTY_PROJECT, course: { ...EMPTY_PROJECT.course, category: 'men' as const } };

const own = (label: string, least: number) =>
  JSON.stringify({
    format: 'turnwright.rules',
    version: 1,
    edition: label,
    limits: [
      {
        rule: 'length at least',
        quantity: 'lengthMm',
        disciplines: ['SL'],
        categories: ['men'],
        least,
        status: 'own entry',
        source: 'the rulebook on the desk',
      },
    ],
  });

describe('an edition of one’s own', () => {
  it('is in force once opened, until another is chosen', () => {
    load(RACED_BY_MEN);
    chooseCategory('women');
    expect(category.value).toBe('women');
    undo();
    expect(category.value).toBe('men');
    const larch = demoPairs[0];
    expect(checkOf(larch, 'SL').verdict).toBe('fails');
    takeEdition({ name: 'club.json', text: own('Club cup', 1500) });
    expect(edition.value.edition).toBe('Club cup');
    expect(checkOf(larch, 'SL')).toMatchObject({ verdict: 'passes', edition: 'Club cup' });
    chooseEdition(season2024.edition);
    expect(checkOf(larch, 'SL').verdict).toBe('fails');
  });

  it('is opened in one step, undone and redone, and kept in the draft with the choice', () => {
    load(RACED_BY_MEN);
    takeEdition({ name: 'club.json', text: own('Club cup', 1500) });
    takeEdition({ name: 'spring.json', text: own('Spring', 1400) });
    undo();
    expect(edition.value.edition).toBe('Club cup');
    undo();
    expect(edition.value).toBe(season2024);
    redo();
    redo();
    chooseEdition('Club cup');
    load(projectFrom(draftOf(project.value))!);
    expect(edition.value).toMatchObject({ edition: 'Club cup', limits: [{ least: 1500 }] });
    const draft = JSON.parse(draftOf(project.value));
    draft.rules.opened[0].limits[0].least = 'much';
    draft.rules.edition = 'Spring';
    load(projectFrom(JSON.stringify(draft))!);
    expect(project.value.rules.opened.map(each => each.edition)).toEqual(['Club cup']);
    expect(edition.value).toBe(season2024);
    load(projectFrom(JSON.stringify({ ...draft, rules: 7 }))!);
    expect(project.value.rules).toEqual(EMPTY_PROJECT.rules);
  });

  it('never hides an edition that comes with the program', () => {
    takeEdition({ name: 'copy.json', text: own(season2024.edition, 100) });
    expect(edition.value.edition).toBe(`${season2024.edition} (copy.json)`);
    expect(editions[0].limits.length).toBeGreaterThan(1);
  });

  it('is refused field by field when it is none, and the one in force stays', () => {
    chooseEdition(season2024.edition);
    takeEdition({ name: 'bad.json', text: own('Bad', -3) });
    expect(editionProblems.value?.lines[0]).toMatch(/limits\[0\]\.least: -3 is not/);
    expect(edition.value).toBe(season2024);
  });
});

describe('a lower-level race', () => {
  it('eases what the edition eases, is undone, and is kept in the draft with the edition', () => {
    load(RACED_BY_MEN);
    const short = { ...demoPairs.find(pair => pair.name === 'Birch 193')!, lengthMm: 1890 };
    const length = () => checkOf(short, 'GS').items.find(item => item.quantity === 'lengthMm')!;
    expect(length().verdict).toBe('fails');
    expect(easesLowerLevel.value).toBe(true);
    chooseLowerLevel(true);
    expect(length()).toMatchObject({ verdict: 'passes', least: 1880 });
    undo();
    expect(length().verdict).toBe('fails');
    redo();
    takeEdition({ name: 'club.json', text: own('Club cup', 1500) });
    expect(easesLowerLevel.value).toBe(false);
    chooseEdition(season2024.edition);
    const draft = draftOf(project.value);
    load(RACED_BY_MEN);
    load(projectFrom(draft)!);
    expect(length().verdict).toBe('passes');
    // A draft from before there was the choice.
    const { lowerLevel: _, ...before } = JSON.parse(draft).rules;
    load(projectFrom(JSON.stringify({ ...JSON.parse(draft), rules: before }))!);
    expect(length().verdict).toBe('fails');
  });
});

describe('the control’s readings in a check', () => {
  it('show what was compared: the first, or 1.015 times the mean of three', () => {
    load(RACED_BY_MEN);
    const birch = demoPairs.find(pair => pair.name === 'Birch 193')!;
    const radius = (...repeats: ReturnType<typeof reading>[]) =>
      checkOf({ ...birch, control: { ...reading(91.9), repeats } }, 'GS').items.find(
        item => item.quantity === 'radiusM',
      )!;
    expect(foundText(radius(), 'metric')).toMatch(/^29\.6 ± 0\.4\sm$/u);
    expect(foundText(radius(reading(91.6), reading(91.7)), 'metric')).toMatch(/^30\.1 ± 0\.4\sm$/u);
  });
});

describe('words of a check', () => {
  it('give what was found with its uncertainty, and the limit in both systems', () => {
    const check = checkOf(demoPairs.find(pair => pair.name === 'Birch 193')!, 'GS');
    const radius = check.items.find(item => item.quantity === 'radiusM')!;
    expect(foundText(radius, 'metric')).toMatch(/^31\.\d ± 0\.\d\sm$/u);
    expect(limitText(radius, 'imperial')).toMatch(/30\sm \(98.4\sft\)/u);
    const both = {
      key: 'rules.limit.leastAndMost',
      values: { least: '30\u00a0m', most: '40\u00a0m' },
    } as const;
    expect(limitText({ ...radius, most: 40, limit: both }, 'imperial')).toMatch(
      /at most 40\sm \(98\.4 to 131\.2\sft\)/u,
    );
    const length = check.items.find(item => item.quantity === 'lengthMm')!;
    expect(foundText(length, 'metric')).toMatch(/^1930 ± 1\smm$/u);
    expect(foundText({ ...length, found: 1929.6 }, 'imperial')).toMatch(/^75\.97 ± 0\.04\sin$/u);
    const waist = check.items.find(item => item.quantity === 'waistWidthMm')!;
    expect(foundText({ ...waist, plusMinus: 0.97 }, 'metric')).toMatch(/^\d+ ± 1\smm$/u);
    const height = check.items.find(item => item.quantity === 'standingHeightMm')!;
    expect(limitedText(height)).toBe('standing height');
    expect(foundText(height, 'metric')).toBe('not given');
  });

  it('tell the sources of the limits once each, with every rule that rests on them', () => {
    const { items } = checkOf(demoPairs.find(pair => pair.name === 'Birch 193')!, 'GS');
    const reported = sourcesText(items);
    for (const item of items) {
      expect(reported).toContain(limitedText(item));
      expect(reported.split(`(${item.source})`)).toHaveLength(2);
    }
  });
});
