import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extentOf, seriesRows, valueAt } from '../../../renderer/kit/series.ts';
import { spread } from '../../../renderer/kit/spread.ts';

describe('valueAt', () => {
  const line = { x: [0, 1, 3], y: [0, 10, 30] };
  it('reads between samples and not beyond them', () => {
    expect(valueAt(line, 2)).toBe(20);
    expect(valueAt(line, 3)).toBe(30);
    expect(valueAt(line, -0.1)).toBeNull();
    expect(valueAt(line, 3.1)).toBeNull();
    expect(valueAt({ x: [], y: [] }, 0)).toBeNull();
    expect(valueAt({ x: [0, 1], y: [1, Number.POSITIVE_INFINITY] }, 0.5)).toBeNull();
  });
});

describe('extentOf', () => {
  it('takes in zero, stops at the ceiling, skips what is not finite, gives a flat line room', () => {
    const axis = { label: 'R', measure: 'radius' } as const;
    expect(extentOf([[5, 9]], { ...axis, zero: true })).toEqual([0, 9]);
    expect(extentOf([[5, 1e6, Number.NaN]], { ...axis, ceiling: 60 })).toEqual([5, 60]);
    expect(extentOf([[10, 10]], axis)).toEqual([9, 11]);
    expect(extentOf([[]], axis)).toEqual([0, 1]);
  });
});

describe('spread', () => {
  it('keeps labels apart, inside and in order', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -50, max: 250, noNaN: true }), { maxLength: 8 }), wanted => {
        const placed = spread(wanted, 20, 0, 200);
        const sorted = [...placed].sort((a, b) => a - b);
        for (const [at, y] of sorted.entries()) {
          expect(y).toBeLessThanOrEqual(200 + 1e-9);
          if (at > 0) expect(y - sorted[at - 1]!).toBeGreaterThanOrEqual(20 - 1e-9);
        }
        for (let i = 0; i < wanted.length; i++)
          for (let j = 0; j < wanted.length; j++)
            if (wanted[i]! < wanted[j]!) expect(placed[i]!).toBeLessThan(placed[j]!);
      }),
    );
  });

  it('leaves labels alone that do not meet', () => {
    expect(spread([120, 20, 70], 20, 0, 200)).toEqual([120, 20, 70]);
  });
});

describe('tables', () => {
  it('puts units in the heading and numbers in the system on screen', () => {
    const series = [{ id: 'r', label: 'rule', x: [0, 0.5], y: [12, Number.POSITIVE_INFINITY] }];
    const x = { label: 'Station', measure: 'station' } as const;
    const y = { label: 'Radius', measure: 'radius' } as const;
    expect(seriesRows(x, y, series, 'metric')).toEqual([
      ['line', 'Station (mm)', 'Radius (m)'],
      ['rule', '0', '12'],
      ['rule', '500', ''],
    ]);
    expect(seriesRows(x, y, series, 'imperial')[2]![1]).toBe('19.6850394');
  });
});
