import { expect, test } from 'vitest';
import { FieldError } from '../../../core/fault/index.ts';
import { readEdition } from '../../../core/rules/index.ts';

test('a file of far too many limits is told in one line', () => {
  const limits = Array(30_000).fill({ bad: 1 });
  const text = JSON.stringify({ format: 'turnwright.rules', version: 1, label: 'x', limits });
  expect(() => readEdition(text)).toThrow(FieldError);
  expect(() => readEdition(text)).toThrow(expect.objectContaining({ field: 'limits', others: [] }));
});
