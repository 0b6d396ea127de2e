import { expect, test } from 'vitest';
import { acceptSkier, skierOf } from '../../../core/skier/index.ts';

test('the usual skier is accepted', () => {
  expect(() => acceptSkier(skierOf({}))).not.toThrow();
});

test('a limit out of range is told by field, value and what is accepted', () => {
  expect(() => acceptSkier({ ...skierOf({}), pushMost: 20 })).toThrow(
    /^pushMost: 20 × body weight found; 1.1 to 8 × body weight is accepted$/,
  );
  expect(() => acceptSkier({ ...skierOf({}), legLongest: 0.5 })).toThrow(
    /legLongest: 0.5 m found with legShortest/,
  );
});

test('an angle out of range is told in degrees', () => {
  expect(() => acceptSkier({ ...skierOf({}), edgeMost: 1.6 })).toThrow(
    /^edgeMost: 91\.67\d* ° found; 10 to 85 °/,
  );
});

test('legs follow from the height unless they are said', () => {
  const { legShortest, legLongest } = skierOf({ heightM: 1.8 });
  expect(legLongest).toBeCloseTo(0.57 * 1.8, 12);
  expect(skierOf({ heightM: 1.8, legLongestM: 1 })).toMatchObject({ legShortest, legLongest: 1 });
});
