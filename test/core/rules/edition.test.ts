import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair, editions, readEdition } from '../../../core/rules/index.ts';
import { told } from '../fault/told.ts';

const own = {
  format: 'turnwright.rules',
  version: 1,
  edition: 'Ostrelle club rules (demo)',
  limits: [
    {
      rule: 'radius at least',
      quantity: 'radiusM',
      disciplines: ['GS'],
      categories: ['U14 girls'],
      least: 14,
      status: 'own entry',
      source: 'club notice',
    },
  ],
};

const problemsOf = (data: unknown): readonly string[] =>
  told(() => readEdition(typeof data === 'string' ? data : JSON.stringify(data)));

describe('readEdition', () => {
  it('reads an own edition and checks against it', () => {
    const edition = readEdition(JSON.stringify(own));
    const pair = {
      lengthMm: 1700,
      contactLengthMm: 1480,
      tipWidthMm: 104,
      waistWidthMm: 66,
      tailWidthMm: 90,
    };
    const check = checkPair(pair, { category: 'U14 girls', discipline: 'GS', edition });
    expect(check.edition).toBe('Ostrelle club rules (demo)');
    expect(check.items).toHaveLength(1);
    expect(check.items[0]).toMatchObject({ status: 'own entry', verdict: 'passes' });
    expect(say(check.items[0].limit)).toBe('at least 14\u00a0m');
  });

  it('reads back every built-in edition', () => {
    for (const edition of editions) expect(readEdition(JSON.stringify(edition))).toEqual(edition);
  });

  it('names the field, what was found and what is accepted', () => {
    const limit = { ...own.limits[0], quantity: 'radius', least: -3 };
    const problems = problemsOf({ ...own, limits: [limit] });
    expect(problems).toHaveLength(2);
    expect(problems[0]).toMatch(/^limits\[0\]\.quantity: "radius" is not accepted; .*radiusM/);
    expect(problems[1]).toBe('limits[0].least: -3 is not accepted; accepted is a number above 0');
    expect(
      problemsOf({ ...own, edition: '', limits: [{ ...own.limits[0], disciplines: 'SL', source: 7 }] }),
    ).toEqual([
      'edition: "" is not accepted; accepted is at least one character',
      'limits[0].disciplines: "SL" is not accepted; accepted is a list',
      'limits[0].source: 7 is not accepted; accepted is text in quotes',
    ]);
    expect(problemsOf([])).toEqual(['file: an empty list is not accepted; accepted is a JSON object']);
    expect(problemsOf({ ...own, limits: [] })).toEqual([
      'limits: an empty list is not accepted; accepted is at least one entry',
    ]);
  });

  it('refuses a limit without a bound, a reversed one, a newer version and what is not JSON', () => {
    const { least, ...boundless } = own.limits[0];
    expect(least).toBe(14);
    expect(problemsOf({ ...own, limits: [boundless] })[0]).toContain('least, most or both');
    expect(problemsOf({ ...own, limits: [{ ...own.limits[0], most: 2 }] })[0]).toContain('greater than most');
    expect(problemsOf({ ...own, version: 2 })[0]).toContain('newer');
    expect(problemsOf('{')[0]).toContain('not JSON');
    expect(problemsOf(null)[0]).toMatch(/^file: null /);
  });
});
