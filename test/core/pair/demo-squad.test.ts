import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { oddEntries, readSheet } from '../../../core/pair/index.ts';

it('the demo squad sheet reads as eighty pairs with nothing odd', () => {
  const sheet = readSheet(
    readFileSync(new URL('../../../renderer/demo/ostrelle-squad.csv', import.meta.url), 'utf8'),
  );
  expect(sheet.problems).toEqual([]);
  expect(sheet.pairs).toHaveLength(80);
  expect(oddEntries(sheet.pairs)).toEqual([]);
  expect(sheet.pairs.every(entry => entry.pair.notes?.startsWith('demo'))).toBe(true);
});
