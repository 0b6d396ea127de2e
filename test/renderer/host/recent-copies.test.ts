import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { createRecentCopies } from '../../../renderer/host/recent-copies.ts';

test('lists the last eight, the latest first, each name once', async () => {
  const copies = createRecentCopies('recent test');
  for (let at = 0; at < 10; at++) await copies.keep(`token ${at}`, `${at}.pair.json`, `text ${at}`);
  await copies.keep('another token', '5.pair.json', 'newer');
  const all = await copies.all();
  expect(all.map(({ name }) => name)).toEqual([5, 9, 8, 7, 6, 4, 3].map(at => `${at}.pair.json`));
  expect(await copies.read(all[0]!.token)).toMatchObject({ name: '5.pair.json', text: 'newer' });
  expect(await copies.read('token 5')).toBeNull();
  expect(await copies.read('token 9')).toMatchObject({ text: 'text 9' });
  // Files opened at once have their places too.
  await Promise.all(['a', 'b', 'c'].map(name => copies.keep(name, name, name)));
  expect((await copies.all()).slice(0, 3).map(({ name }) => name)).toEqual(['c', 'b', 'a']);
  expect(await copies.all()).toHaveLength(8);
});

test('a whole rack of a club is kept', async () => {
  const copies = createRecentCopies('recent racks');
  expect(await copies.keep('club', 'club.rack.json', 'y'.repeat(8_000_000))).toBe(true);
  expect((await copies.all())[0]!.name).toBe('club.rack.json');
  expect((await copies.read('club'))!.text).toHaveLength(8_000_000);
});
