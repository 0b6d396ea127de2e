import { expect, test } from 'vitest';
import { FieldError } from '../../../core/fault/index.ts';
import { say } from '../../../core/language/index.ts';
import { acceptSkier, type Skier, skierOf } from '../../../core/skier/index.ts';

test('the usual skier is accepted', () => {
  expect(() => acceptSkier(skierOf({}))).not.toThrow();
});

test('a limit out of range is told by field, value and what is accepted', () => {
  const fault = (skier: Skier) => {
    try {
      acceptSkier(skier);
      return null;
    } catch (error) {
      return error instanceof FieldError ? say(error) : error;
    }
  };
  expect(fault({ ...skierOf({}), pushMost: 20 })).toBe(
    'pushMost: 20.00\u00a0× body weight is not accepted; accepted is a number from 1.10 to 8.00\u00a0× body weight',
  );
  expect(fault({ ...skierOf({}), edgeMost: 1.6 })).toBe(
    'edgeMost: 91.7° is not accepted; accepted is a number from 10.0 to 85.0°',
  );
  expect(fault({ ...skierOf({}), legLongest: 0.5 })).toMatch(
    /^legLongest: 0.50\u00a0m is not accepted; accepted is 0.58/,
  );
});

test('legs follow from the height unless they are said', () => {
  const { legShortest, legLongest } = skierOf({ heightM: 1.8 });
  expect(legLongest).toBeCloseTo(0.57 * 1.8, 12);
  expect(skierOf({ heightM: 1.8, legLongestM: 1 })).toMatchObject({ legShortest, legLongest: 1 });
});
