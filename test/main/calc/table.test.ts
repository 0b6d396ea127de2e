import { expect, test } from 'vitest';
import { formatCsv, formatTable } from '../../../main/calc/table.ts';

const table = {
  title: 'Two pairs',
  columns: [{ name: 'name' }, { name: 'radiusM', decimals: 1 }],
  rows: [
    ['Larch', 10.44],
    ['Rowan, long', null],
    ['Alder "B"', -0.04],
  ],
};

test('lines up words to the left and numbers to the right', () => {
  expect(formatTable(table)).toBe(
    [
      'Two pairs',
      'name         radiusM',
      '───────────  ───────',
      'Larch           10.4',
      'Rowan, long        –',
      'Alder "B"        0.0',
      '',
    ].join('\n'),
  );
});

test('CSV quotes what needs it and keeps every digit', () => {
  expect(formatCsv(table)).toBe('\uFEFFname,radiusM\nLarch,10.44\n"Rowan, long",\n"Alder ""B""",-0.04\n');
});
