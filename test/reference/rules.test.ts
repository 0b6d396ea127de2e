import { describe, expect, it } from 'vitest';
import {
  controlRadius,
  controlStations,
  controlVerdict,
  rulebookRadius,
  season2024,
} from '../../core/rules/index.ts';
import { arcReading } from '../core/rules/control-readings.ts';

/** International federation equipment specification, control procedure as reported [seen in part]. */
describe('the control procedure', () => {
  const giantSlalom = {
    developedLength: 1.93,
    tailToWaist: 0.86,
    frontWidth: 0.0905,
    rearWidth: 0.083,
    waistWidth: 0.065,
  };
  const slalom = {
    developedLength: 1.65,
    tailToWaist: 0.74,
    frontWidth: 0.11,
    rearWidth: 0.099,
    waistWidth: 0.066,
  };

  it('reads 30.539 m over 1630 mm and 12.618 m over 1394 mm [derived]', () => {
    expect(controlStations(1.93, 0.86).distance).toBeCloseTo(1.63, 9);
    expect(controlRadius(giantSlalom)).toBeCloseTo(30.539, 3);
    expect(controlStations(1.65, 0.74).distance).toBeCloseTo(1.394, 9);
    expect(controlRadius(slalom)).toBeCloseTo(12.618, 3);
  });

  it('reads a true 13 m arc as 12.965 m and a true 30 m arc as 29.919 m [derived]', () => {
    const short = arcReading(13, 1.65, 0.74, 0.066);
    expect(short.frontWidth * 1000).toBeCloseTo(106.8, 3);
    expect(short.rearWidth * 1000).toBeCloseTo(100.142, 3);
    expect(rulebookRadius(1.394, short.frontWidth, short.rearWidth, 0.066)).toBeCloseTo(12.965, 3);
    const long = arcReading(30, 1.93, 0.86, 0.065);
    expect(long.frontWidth * 1000).toBeCloseTo(89.43, 3);
    expect(long.rearWidth * 1000).toBeCloseTo(84.973, 3);
    expect(rulebookRadius(1.63, long.frontWidth, long.rearWidth, 0.065)).toBeCloseTo(29.919, 3);
  });

  it('accepts 1.015 times the mean of three readings when the first is under [seen in part]', () => {
    const under = { ...giantSlalom, frontWidth: 0.0914 };
    const radius = controlRadius(under);
    expect(radius).toBeLessThan(30);
    expect(controlVerdict([under], 30).verdict).toBe('two more readings needed');
    const three = controlVerdict([under, under, under], 30);
    expect(three.compared).toBeCloseTo(1.015 * radius, 9);
    expect(three.verdict).toBe('accepted');
    const wide = { ...giantSlalom, frontWidth: 0.0925 };
    expect(controlVerdict([wide, wide, wide], 30).verdict).toBe('refused');
    expect(controlVerdict([giantSlalom], 30).verdict).toBe('accepted');
  });
});

describe('the limits and how well each is established', () => {
  const limit = (quantity: string, discipline: string, category: string) =>
    season2024.limits.filter(
      entry =>
        entry.quantity === quantity &&
        (entry.disciplines as string[]).includes(discipline) &&
        (entry.categories as string[]).includes(category),
    );

  it.each([
    // Minimum lengths and radii as listed by an Olympic broadcaster's guide [seen].
    ['men', 'DH', 2180, 50],
    ['men', 'SG', 2100, 45],
    ['men', 'GS', 1930, 30],
    ['men', 'SL', 1650, null],
    ['women', 'DH', 2100, 50],
    ['women', 'SG', 2050, 40],
    ['women', 'GS', 1880, 30],
    ['women', 'SL', 1550, null],
  ])('%s %s: %d mm, radius %s', (category, discipline, length, radius) => {
    const lengths = limit('lengthMm', discipline, category);
    expect(lengths.map(entry => [entry.least, entry.status])).toEqual([[length, 'seen']]);
    const radii = limit('radiusM', discipline, category);
    expect(radii.map(entry => [entry.least, entry.status])).toEqual(
      radius === null ? [] : [[radius, 'seen']],
    );
  });

  it('keeps what was recalled as from memory', () => {
    const recalled = [
      ...limit('lengthMm', 'SL', 'U14 girls'),
      ...limit('lengthMm', 'GS', 'U16 boys'),
      ...limit('radiusM', 'GS', 'U16 girls'),
      ...limit('radiusM', 'SG', 'U14 boys'),
      ...limit('waistWidthMm', 'SL', 'men'),
      ...limit('waistWidthMm', 'DH', 'women'),
      ...limit('frontWidthMm', 'SG', 'men'),
    ];
    expect(recalled.map(entry => entry.least ?? entry.most)).toEqual([1300, 1880, 17, 27, 63, 65, 95]);
    expect(new Set(recalled.map(entry => entry.status))).toEqual(new Set(['from memory']));
  });
});
