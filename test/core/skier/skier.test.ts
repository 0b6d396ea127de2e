import { expect, test } from 'vitest';
import { acceptSkier, USUAL_SKIER } from '../../../core/skier/index.ts';

test('the usual skier is accepted', () => {
  expect(() => acceptSkier(USUAL_SKIER)).not.toThrow();
});

test('a limit out of range is told by field, value and what is accepted', () => {
  expect(() => acceptSkier({ ...USUAL_SKIER, pushMost: 20 })).toThrow(
    expect.objectContaining({ field: 'pushMost' }),
  );
  expect(() => acceptSkier({ ...USUAL_SKIER, legLongest: 0.65 })).toThrow(
    expect.objectContaining({ field: 'legLongest' }),
  );
});
