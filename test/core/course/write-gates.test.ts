import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Gate, readGates, writeGates } from '../../../core/course/index.ts';

const gate = (label: string, y: number, others: readonly (readonly [string, string])[]): Gate => ({
  label,
  x: y % 2,
  y,
  colour: null,
  turn: null,
  others,
});

test('a set opens again as it was saved, whatever stands in its extra headings and cells', () => {
  const text = fc.oneof(
    fc.string({ minLength: 1 }),
    fc.constantFrom('a;b', 'left|right', 'tab\there', '=x', 'a,b', '"'),
  );
  const filled = text.map(each => each.trim()).filter(each => each !== '');
  const separator = fc.constantFrom(',', ';', '\t', '|');
  fc.assert(
    fc.property(filled, fc.array(filled, { minLength: 1, maxLength: 4 }), separator, (heading, cells, by) => {
      // A heading of a meaning of its own is another matter.
      const named = `note ${heading}`.trim();
      const gates = cells.map((cell, at) => gate(String(at + 1), at + 1, [[named, cell]]));
      const read = readGates(writeGates(gates, by as ','));
      expect(read.problems).toEqual([]);
      expect(read.gates).toEqual(gates);
    }),
  );
});
