import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPair } from '../../../../core/pair/index.ts';
import { controlReadings, type StatedControl } from '../../../../core/rules/index.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import { controlRange, withReading } from '../../../../renderer/views/rules/control-edits.ts';

const [larch] = demoPairs;

describe('readings of the control put in one after the other', () => {
  it('never make a pair that is none, in whatever order they come', () => {
    const step = fc.record({
      field: fc.constantFrom(...controlReadings.map(({ field }) => field)),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      clear: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), steps => {
        let pair = larch;
        for (const { field, share, clear } of steps) {
          const [least, most] = controlRange(pair.control, field);
          if (least > most) continue;
          const value = clear ? undefined : Number((least + share * (most - least)).toFixed(1));
          pair = { ...pair, ...withReading(pair, field, value) };
          expect(checkPair(pair)).toEqual([]);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('leave nothing behind when the last one is taken away', () => {
    const control: StatedControl = { tailToWaistMm: 700 };
    const one = { ...larch, ...withReading(larch, 'tailToWaistMm', 700) };
    expect(one.control).toEqual(control);
    expect(withReading(one, 'tailToWaistMm', undefined)).toEqual({ control: undefined });
  });
});
