import 'fake-indexeddb/auto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { checkPair, rackOf } from '../../core/pair/index.ts';
import { openJournal } from '../../main/disk/index.ts';
import { createRecentCopies } from '../../renderer/host/recent-copies.ts';
import { demoEntries } from '../../renderer/rack/index.ts';
import {
  type DraftRecords,
  draftChanges,
  draftOf,
  EMPTY_PROJECT,
  type Project,
  projectFrom,
  projectFromRecords,
} from '../../renderer/state/index.ts';
import { harmedJson, harmedText, runs, same } from './support/cases.ts';

const rack = demoEntries().slice(0, 2);
const start: Project = {
  ...EMPTY_PROJECT,
  rack,
  chosen: [rack[0]!.id, null, null, null],
  activeId: rack[0]!.id,
  rackFile: { token: 'a', name: 'club.rack.json', rack: rackOf('club', []), savedIds: [], readOnly: false },
  unreadable: [{ id: 'draft', name: 'Last work', fileName: 'work.json', why: 'damaged', text: '{"half":' }],
};
const sound = draftChanges(null, start) as DraftRecords;

/** One or two records harmed, or taken away. */
const harmedRecords: fc.Arbitrary<DraftRecords> = fc
  .array(
    fc
      .constantFrom(...Object.keys(sound))
      .chain(key =>
        fc.tuple(
          fc.constant(key),
          fc.option(
            key === 'unreadable'
              ? harmedText(sound[key]!)
              : fc.oneof(harmedText(sound[key]!), harmedJson(sound[key]!)),
            { freq: 12 },
          ),
        ),
      ),
    { minLength: 1, maxLength: 2 },
  )
  .map(harms => {
    const records: Record<string, string> = { ...sound };
    for (const [key, text] of harms) {
      if (text === null) delete records[key];
      else records[key] = text;
    }
    return records;
  });

/** What stands in a project that came out of a harmed draft can be worked with, and is kept from then on. */
function isWhole(project: Project): void {
  for (const { pair, saved } of project.rack) {
    same(checkPair(pair), []);
    if (saved) same(checkPair(saved), []);
  }
  const ids = project.rack.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of [...project.chosen, project.activeId]) if (id !== null) expect(ids).toContain(id);
  same(projectFromRecords(draftChanges(null, project) as DraftRecords).project, project);
}

test('of a draft in records every pair is in the rack or set aside word for word', () => {
  fc.assert(
    fc.property(harmedRecords, records => {
      const { project, unreadable } = projectFromRecords(records);
      if (!project) {
        expect(unreadable.length).toBeGreaterThan(0);
        return;
      }
      isWhole(project);
      const kept = project.rack.length + project.unreadable.length + unreadable.length;
      expect(kept).toBeGreaterThanOrEqual(Object.keys(records).filter(key => key.startsWith('pair/')).length);
    }),
    runs(),
  );
}, 240_000);

test('of a draft in one text there is a whole project or none', () => {
  const text = draftOf(start);
  fc.assert(
    fc.property(fc.oneof(harmedText(text), harmedJson(text)), given => {
      const project = projectFrom(given);
      if (project) isWhole(project);
      else expect(projectFromRecords({ whole: given }).unreadable.length).toBe(given.trim() ? 1 : 0);
    }),
    // Only the first versions kept it so.
    runs(0.25),
  );
});

test('a journal that something else wrote in is read as far as it is one, and takes the next write', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'turnwright-journal-'));
  const path = join(folder, 'draft.journal');
  const journal = openJournal(path);
  for (let at = 0; at < 4; at++) await journal.write({ rest: `{"at":${at}}`, [`pair/${at}`]: 'x' });
  const whole = await readFile(path, 'utf8');
  const [line = ''] = whole.split('\n');
  const written = fc.oneof(
    harmedText(whole),
    harmedJson(line).map(odd => `${whole}${odd}\n`),
  );
  await fc.assert(
    fc.asyncProperty(written, async text => {
      await writeFile(path, text);
      const again = openJournal(path);
      const records = (await again.read()) ?? {};
      for (const record of Object.values(records)) expect(typeof record).toBe('string');
      await again.write({ after: 'yes' });
      same(await openJournal(path).read(), { ...records, after: 'yes' });
    }),
    // Each case writes to the disk and flushes it.
    runs(0.1),
  );
  await rm(folder, { recursive: true });
});

test('recent files are listed whatever the browser kept of them', async () => {
  const name = 'recent, harmed';
  const copies = createRecentCopies(name);
  const database = await openDB(name, 1, {
    upgrade(created) {
      created.createObjectStore('files', { keyPath: 'token' });
      created.createObjectStore('texts');
    },
  });
  const odd = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.string(),
    fc.constantFrom<unknown>(undefined, null, Number.NaN, 1n, new Date(0)),
  );
  const kept = fc.record({ name: odd, folder: odd, at: odd }, { requiredKeys: [] });
  await fc.assert(
    fc.asyncProperty(fc.array(kept, { maxLength: 10 }), odd, async (files, text) => {
      await Promise.all([database.clear('files'), database.clear('texts')]);
      for (const [at, file] of files.entries()) {
        await database.put('files', { ...file, token: `t${at}` });
        await database.put('texts', text, `t${at}`);
      }
      for (const { token, name, folder } of await copies.all()) {
        if (![token, name, folder].every(each => typeof each === 'string')) expect.fail('no file of ours');
        const read = await copies.read(token);
        if (read !== null && typeof read.text !== 'string') expect.fail('no text');
      }
      expect(await copies.keep('new', 'new.pair.json', 'new text')).toBe(true);
      const [first] = await copies.all();
      expect(first).toEqual({ token: 'new', name: 'new.pair.json', folder: '' });
      expect((await copies.all()).length).toBeLessThanOrEqual(8);
      expect(await copies.read('new')).toMatchObject({ text: 'new text' });
    }),
    // The stand-in of the browser's database takes its time.
    runs(0.1),
  );
  database.close();
});
