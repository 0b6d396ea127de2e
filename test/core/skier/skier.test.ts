import { expect, test } from 'vitest';
import { acceptSkier, USUAL_SKIER } from '../../../core/skier/index.ts';

test('the usual skier is accepted', () => {
  expect(() => acceptSkier(USUAL_SKIER)).not.toThrow();
});

test('a limit out of range is told by field, value and what is accepted', () => {
  expect(() => acceptSkier({ ...USUAL_SKIER, pushMost: 20 })).toThrow(
    /^pushMost: 20 body weights found; 1.1 to 8 body weights is accepted$/,
  );
  expect(() => acceptSkier({ ...USUAL_SKIER, legLongest: 0.65 })).toThrow(
    /legLongest: 0.65 m found with legShortest 0.65 m/,
  );
});
