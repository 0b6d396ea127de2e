import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPair } from '../../../core/pair/index.ts';
import { controlReadings, type StatedControl, statedReading } from '../../../core/rules/index.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import { controlRange, withReading } from '../../../renderer/rules/control-edits.ts';

const [larch] = demoPairs;

describe('readings of the control put in one after the other', () => {
  it('never make a pair that is none, in whatever order they come', () => {
    const step = fc.record({
      nth: fc.nat({ max: 2 }),
      field: fc.constantFrom(...controlReadings.map(({ field }) => field)),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      clear: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), steps => {
        let pair = larch;
        for (const { nth, field, share, clear } of steps) {
          const [least, most] = controlRange(statedReading(pair.control, nth), field);
          if (least > most) continue;
          const value = clear ? undefined : Number((least + share * (most - least)).toFixed(1));
          pair = { ...pair, ...withReading(pair, nth, field, value) };
          expect(checkPair(pair)).toEqual([]);
          expect(statedReading(pair.control, nth)?.[field]).toBe(value);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('leave nothing behind when the last one is taken away', () => {
    const control: StatedControl = { tailToWaistMm: 700 };
    const one = { ...larch, ...withReading(larch, 0, 'tailToWaistMm', 700) };
    expect(one.control).toEqual(control);
    expect(withReading(one, 0, 'tailToWaistMm', undefined)).toEqual({ control: undefined });
    const third = { ...one, ...withReading(one, 2, 'waistWidthMm', 66) };
    expect(third.control).toEqual({ ...control, repeats: [{}, { waistWidthMm: 66 }] });
    expect(withReading(third, 2, 'waistWidthMm', undefined)).toEqual({ control });
    // The first alone is taken back: what was read after it stays.
    expect(withReading(third, 0, 'tailToWaistMm', undefined)).toEqual({
      control: { repeats: [{}, { waistWidthMm: 66 }] },
    });
  });
});
