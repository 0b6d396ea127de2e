import { expect, test } from 'vitest';
import { accept, FieldError, isAccepted, plainFault, throwFaults } from '../../../core/fault/index.ts';

test('a field error holds what a person needs to mend it, as data', () => {
  const error = new FieldError({
    field: 'slope',
    found: 95,
    accepted: { from: 0, to: 80, unit: '°' },
    where: { line: 4 },
  });
  expect(error).toBeInstanceOf(RangeError);
  expect({ ...error }).toEqual({
    name: 'FieldError',
    field: 'slope',
    found: 95,
    accepted: { from: 0, to: 80, unit: '°' },
    where: { line: 4 },
    others: [],
  });
});

test('the ends of a range are accepted or not as it says, and nothing that is no number', () => {
  expect([0, 1, 2].map(value => isAccepted(value, { from: 0, to: 1 }))).toEqual([true, true, false]);
  expect([0, 0.5, 1].map(value => isAccepted(value, { above: 0, below: 1 }))).toEqual([false, true, false]);
  expect([1, 1.5].map(value => isAccepted(value, { whole: true }))).toEqual([true, false]);
  expect([Number.NaN, Infinity].map(value => isAccepted(value, {}))).toEqual([false, false]);
  expect(isAccepted(Infinity, { from: 0, to: Infinity })).toBe(true);
});

test('accept names the field, the number in its unit and the range', () => {
  expect(() => accept('mass', 80, { from: 20, to: 250 })).not.toThrow();
  let found: unknown;
  try {
    accept('mass', 5, { from: 20, to: 250, quantity: 'mass' });
  } catch (error) {
    found = error;
  }
  expect(found).toMatchObject({
    field: 'mass',
    found: { quantity: 'mass', value: 5 },
    accepted: { from: 20, to: 250, quantity: 'mass' },
  });
});

test('several faults are thrown as the first with the others behind it, none not at all', () => {
  const [one, two] = ['a', 'b'].map(field => ({ field, found: 1, accepted: { from: 2 } }));
  expect(() => throwFaults([])).not.toThrow();
  expect(() => throwFaults([one!, two!])).toThrow(
    expect.objectContaining({ field: 'a', others: [expect.objectContaining({ field: 'b' })] }),
  );
});

test('a fault is told by the path of the whole it is found in', () => {
  const fault = { field: 'lengthMm', found: 1, accepted: { from: 600 } };
  expect(plainFault(fault, { field: 'pairs[2].lengthMm', where: { row: 3 } })).toEqual({
    field: 'pairs[2].lengthMm',
    found: 1,
    accepted: { from: 600 },
    where: { row: 3 },
  });
});
