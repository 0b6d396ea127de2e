import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { say, sayAll } from '../../../core/language/index.ts';
import {
  checkPair,
  controlFinding,
  limitVerdict,
  rulebookRadius,
  rulebookUncertainty,
  season2024,
} from '../../../core/rules/index.ts';
import { TAPE_AND_CALIPER } from '../../../core/shape/index.ts';
import { arcReading, radiusOf, reading } from './control-readings.ts';

const giantSlalom = {
  discipline: 'GS' as const,
  lengthMm: 1935,
  contactLengthMm: 1660,
  tipWidthMm: 97,
  waistWidthMm: 64.5,
  tailWidthMm: 76,
};

const arc = (radius: number) => arcReading(radius, 1.93, 0.86, 0.065);

describe('checkPair', () => {
  it('judges what the pair tells and says what it does not', () => {
    const check = checkPair(giantSlalom, { category: 'men' });
    const byRule = Object.fromEntries(check.items.map(item => [item.quantity, item]));
    expect(byRule.lengthMm.verdict).toBe('passes');
    expect(byRule.waistWidthMm.verdict).toBe('passes');
    expect(byRule.standingHeightMm).toMatchObject({ verdict: 'not given', found: null, plusMinus: null });
    // 1660²/(2000·44) = 31.314 m, u = 0.436 m.
    expect(byRule.radiusM.found).toBeCloseTo(31.314, 3);
    expect(byRule.radiusM.plusMinus).toBeCloseTo(0.437, 3);
    expect(byRule.radiusM.verdict).toBe('passes');
    expect(check.verdict).toBe('passes');
    expect(sayAll(check.caution)).toContain('standing height');
    expect(sayAll(check.caution)).toContain('equipment controller');
  });

  it('is too close to call within the measuring uncertainty on both sides of the limit', () => {
    const byTip = (tipWidthMm: number) =>
      checkPair({ ...giantSlalom, tipWidthMm }, { category: 'men' }).items.find(
        item => item.quantity === 'radiusM',
      );
    expect(byTip(98.6)).toMatchObject({ verdict: 'too close to call' });
    expect(byTip(99.2)).toMatchObject({ verdict: 'too close to call' });
    expect(byTip(101)).toMatchObject({ verdict: 'fails' });
  });

  it('takes the control, heights and soles a pair file states, the control only once it is complete', () => {
    const control = reading(90.5);
    const pair = { ...giantSlalom, tipWidthMm: 110, control, standingHeightMm: 50.6, bootSoleHeightMm: 42 };
    const found = (given: typeof pair | Omit<typeof pair, 'control'>) =>
      Object.fromEntries(
        checkPair(given, { category: 'men' }).items.map(item => [item.quantity, [item.found, item.verdict]]),
      );
    // The same pair by its catalogue widths would be under 30 m.
    expect(found(pair).radiusM[0]).toBeCloseTo(radiusOf(90.5), 9);
    expect(found(pair).radiusM[1]).toBe('passes');
    expect(found(pair).lengthMm[0]).toBe(1930);
    expect(found(pair).standingHeightMm).toEqual([50.6, 'fails']);
    expect(found(pair).bootSoleMm).toEqual([42, 'passes']);
    const { waistWidthMm: _, ...unfinished } = control;
    const waiting = found({ ...pair, control: unfinished as typeof control });
    expect(waiting.radiusM[1]).toBe('fails');
    expect(waiting.radiusM[0]).toBeCloseTo(1660 ** 2 / (2000 * (110 + 76 - 129)), 9);
  });

  it('carries the control on from a first reading under the limit', () => {
    const radius = (...fronts: number[]) =>
      checkPair(
        { ...giantSlalom, control: { ...reading(fronts[0]), repeats: fronts.slice(1).map(reading) } },
        { category: 'men' },
      ).items.find(item => item.quantity === 'radiusM')!;
    const three = radius(91.9, 91.6, 91.7);
    expect(three.found).toBeCloseTo((1.015 * (radiusOf(91.9) + radiusOf(91.6) + radiusOf(91.7))) / 3, 9);
    expect(three.control).toMatchObject({ used: 'three readings', procedure: 'accepted' });
    // The same tape and caliper three times: their own error stays.
    expect(three.plusMinus).toBeGreaterThan(radius(91.7).plusMinus!);
    expect(three.verdict).toBe('too close to call');
    expect(radius(93, 93, 92).control).toMatchObject({ used: 'three readings', procedure: 'refused' });
    expect(radius(93, 93, 92).verdict).toBe('fails');
    const one = radius(92.5);
    expect(one.found).toBeCloseTo(radiusOf(92.5), 9);
    // 30/1.015 = 29.5567 m.
    expect(say(one.note!)).toMatch(
      /under 30 m, so two more are taken and 1\.015 times .* must be at least 29\.56 m$/,
    );
    const two = radius(91.9, 91.6);
    expect(two.found).toBeCloseTo(radiusOf(91.9), 9);
    expect(two.control).toMatchObject({ used: 'first reading', procedure: 'two more readings needed' });
    expect(say(two.note!)).toMatch(/one more is taken and .* the third must be at least 29\.30 m$/);
    // Over the limit at once: what was read after it does not count against it.
    expect(say(radius(90.5).note!)).toBe('from the control stations at 80 % and 90 %');
    const enough = radius(90.5, 95, 95);
    expect(enough.found).toBeCloseTo(radiusOf(90.5), 9);
    expect(say(enough.note!)).toMatch(/the first reading is enough/);
  });

  it('tells a third reading that is just enough', () => {
    fc.assert(
      fc.property(fc.double({ min: 28.6, max: 29.99, noNaN: true }), second => {
        const needed = Number(
          /at least ([\d.]+) m$/.exec(
            say(controlFinding([arc(29.5), arc(second)], TAPE_AND_CALIPER, 30).note),
          )?.[1],
        );
        const radii = controlFinding([arc(29.5), arc(second)], TAPE_AND_CALIPER, 30).radii;
        const mean = (third: number) => (1.015 * (radii[0] + radii[1] + third)) / 3;
        expect(mean(needed)).toBeGreaterThanOrEqual(30 - 1e-9);
        expect(mean(needed - 0.0101)).toBeLessThan(30);
      }),
    );
    expect(() => controlFinding([], TAPE_AND_CALIPER, 30)).toThrow(RangeError);
  });

  it('eases the length in lower-level races only where the edition says so', () => {
    const short = { ...giantSlalom, lengthMm: 1890 };
    const lengthItem = (lowerLevel: boolean) =>
      checkPair(short, { category: 'men', lowerLevel }).items.find(item => item.quantity === 'lengthMm');
    expect(lengthItem(false)?.verdict).toBe('fails');
    const eased = lengthItem(true)!;
    expect(eased.verdict).toBe('passes');
    expect(say(eased.limit)).toBe(
      'at least 1880\u00a0mm (1930\u00a0mm, eased by 50\u00a0mm for a lower-level race)',
    );
    const slalom = { ...short, discipline: 'SL' as const, lengthMm: 1640 };
    expect(checkPair(slalom, { category: 'men', lowerLevel: true }).verdict).toBe('fails');
  });

  it('says when an edition holds nothing for the question', () => {
    const check = checkPair(giantSlalom, { category: 'men', discipline: 'other' });
    expect(check.items).toEqual([]);
    expect(check.verdict).toBe('not given');
    expect(sayAll(check.caution)).toContain('no limits for other, men');
  });

  it('finds no radius in a ski without sidecut', () => {
    const straight = { ...giantSlalom, tipWidthMm: 64.5, tailWidthMm: 64.5 };
    const item = checkPair(straight, { category: 'men' }).items.find(entry => entry.quantity === 'radiusM');
    expect(item).toMatchObject({ found: null, verdict: 'not given' });
  });

  it('carries the status of every limit through', () => {
    const check = checkPair({ ...giantSlalom, lengthMm: 1750 }, { category: 'U16 boys' });
    expect(check.edition).toBe(season2024.edition);
    expect(check.items.map(item => item.status)).toEqual(['from memory', 'from memory']);
    expect(sayAll(check.caution)).toContain('from memory');
  });
});

describe('limitVerdict', () => {
  it('does not let the rounding of a unit decide at exactly the uncertainty', () => {
    for (const tenths of [16510, 19310, 21810]) {
      const least = (tenths - 10) / 10;
      expect(limitVerdict((tenths / 10 / 1000) * 1000, 1, least, undefined)).toBe('passes');
    }
    expect(limitVerdict(63.25, 1000 * 0.00025, 63, undefined)).toBe('passes');
    expect(limitVerdict(62.9999999, 0, 63, undefined)).toBe('fails');
  });

  it('never passes a value beyond the limit nor fails one within it', () => {
    const positive = fc.double({ min: 0.1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 0, max: 5, noNaN: true }), (found, least, u) => {
        const verdict = limitVerdict(found, u, least, undefined);
        if (verdict === 'passes') expect(found).toBeGreaterThanOrEqual(least);
        if (verdict === 'fails') expect(found).toBeLessThan(least);
        if (Math.abs(found - least) > u * 1.0001) expect(verdict).not.toBe('too close to call');
      }),
    );
  });
});

describe('rulebookUncertainty', () => {
  it('agrees with moving each measurement by its own uncertainty', () => {
    const measured = [1.394, 0.11, 0.099, 0.066] as const;
    const base = rulebookRadius(...measured);
    const [l, s, h, w] = measured;
    const moved = Math.hypot(
      rulebookRadius(l + 1e-3, s, h, w) - base,
      rulebookRadius(l, s + 0.25e-3, h, w) - base,
      rulebookRadius(l, s, h + 0.25e-3, w) - base,
      rulebookRadius(l, s, h, w + 0.25e-3) - base,
    );
    expect(rulebookUncertainty(...measured, TAPE_AND_CALIPER) / moved).toBeCloseTo(1, 2);
  });
});
