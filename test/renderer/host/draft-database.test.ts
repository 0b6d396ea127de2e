import 'fake-indexeddb/auto';
import { beforeEach, expect, test } from 'vitest';
import { createDraftDatabase, type DraftDatabase } from '../../../renderer/host/draft-database.ts';

let database: DraftDatabase;
let count = 0;
beforeEach(() => {
  count += 1;
  database = createDraftDatabase(`test ${count}`);
});

test('keeps windows apart, record by record', async () => {
  await database.write('a', { 'pair/1': 'one', rest: '{}' }, 1);
  await database.write('ab', { 'pair/1': 'other' }, 0);
  await database.write('a', { 'pair/1': null, 'pair/2': 'two' }, 2);
  expect(await database.read('a')).toEqual({ 'pair/2': 'two', rest: '{}' });
  expect(await database.read('ab')).toEqual({ 'pair/1': 'other' });
  expect(await database.read('none')).toBeNull();
  expect((await database.windows()).map(({ window, unsaved }) => [window, unsaved])).toContainEqual(['a', 2]);
});

test('hands a draft over whole', async () => {
  await database.write('a', { 'pair/1': 'one', 'pair/2': 'two' }, 3);
  await database.write('c', { rest: 'own' }, 0);
  await database.hand('a', 'b');
  expect(await database.read('a')).toBeNull();
  expect(await database.read('b')).toEqual({ 'pair/1': 'one', 'pair/2': 'two' });
  expect(await database.read('c')).toEqual({ rest: 'own' });
  expect((await database.windows()).find(each => each.window === 'b')?.unsaved).toBe(3);
  await database.remove('b');
  expect(await database.read('b')).toBeNull();
  expect(await database.windows()).toHaveLength(1);
});

test('twenty thousand pairs fit', async () => {
  const pairs = Array.from({ length: 20_000 }, (_, at) => [
    `pair/${at}`,
    `{"name":"${at}"}`.padEnd(900, ' '),
  ]);
  await database.write('squad', Object.fromEntries(pairs), 1);
  expect(Object.keys((await database.read('squad'))!)).toHaveLength(20_000);
});
