import { appendFile, mkdtemp, readFile, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import { openJournal } from '../../../main/disk/journal.ts';

let path: string;
beforeEach(async () => {
  path = join(await mkdtemp(join(tmpdir(), 'turnwright-journal-')), 'own', 'draft.journal');
});

test('holds nothing before the first write, and then what was written last', async () => {
  expect(await openJournal(path).read()).toBeNull();
  const journal = openJournal(path);
  await journal.write({ 'pair/a': '1', 'pair/b': '2', rest: '{}' });
  await journal.write({ 'pair/a': '3', 'pair/b': null });
  expect(await journal.read()).toEqual({ 'pair/a': '3', rest: '{}' });
  expect(await openJournal(path).read()).toEqual({ 'pair/a': '3', rest: '{}' });
});

test('writes asked for at once follow each other', async () => {
  const journal = openJournal(path);
  await Promise.all(Array.from({ length: 40 }, (_, at) => journal.write({ rest: String(at) })));
  expect(await openJournal(path).read()).toEqual({ rest: '39' });
});

test('cut anywhere it gives a state that was once whole, and takes the next write', async () => {
  const journal = openJournal(path);
  const states: object[] = [];
  for (let at = 0; at < 12; at++) {
    await journal.write({ one: `${at} ü\n`, two: `${at} "`, [`pair/${at}`]: at % 3 ? 'x' : null });
    states.push((await journal.read())!);
  }
  const whole = await readFile(path);
  // Whichever byte the disk stopped at, the first line, written whole or not at all, is there.
  const firstLine = whole.indexOf(10) + 1;
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: firstLine, max: whole.length }), async cut => {
      await writeFile(path, whole.subarray(0, cut));
      const again = openJournal(path);
      const found = (await again.read())!;
      expect(states).toContainEqual(found);
      await again.write({ after: 'yes' });
      expect(await openJournal(path).read()).toEqual({ ...found, after: 'yes' });
    }),
  );
});

test('a long winter of edits keeps the file short', async () => {
  const journal = openJournal(path);
  for (let at = 0; at < 60; at++) await journal.write({ rest: `${at}`.padEnd(500_000, 'x') });
  expect((await stat(path)).size).toBeLessThan(8_000_000);
  expect((await openJournal(path).read())!.rest!.slice(0, 2)).toBe('59');
});

test('what other programs appended does not take the rest with it', async () => {
  await openJournal(path).write({ rest: 'kept' });
  await appendFile(path, 'no line of ours\n');
  const journal = openJournal(path);
  expect(await journal.read()).toEqual({ rest: 'kept' });
  await journal.write({ more: 'too' });
  expect(await openJournal(path).read()).toEqual({ rest: 'kept', more: 'too' });
});
