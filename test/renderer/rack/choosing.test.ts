import { beforeEach, expect, test } from 'vitest';
import { remove } from '../../../renderer/rack/choosing.ts';
import { demoEntries } from '../../../renderer/rack/index.ts';
import { EMPTY_PROJECT, load, project, type RackEntry, status, undo } from '../../../renderer/state/index.ts';
import { plainPair } from '../plain-pair.ts';

const pair = plainPair('Ash');
const changed = plainPair('Ash', 65);
const demo = demoEntries()[0]!;

/** Each way a pair can stand in the rack, and what is true of it once it is taken out. */
const WAYS: readonly [string, RackEntry, string][] = [
  [
    'in a file',
    { id: 'a', pair, saved: pair, fileToken: 'f', fileName: 'ash.pair.json' },
    'Its file is untouched.',
  ],
  [
    'in a file, and changed',
    { id: 'a', pair: changed, saved: pair, fileToken: 'f', fileName: 'ash.pair.json' },
    'Its file is as it was last saved; what was changed since is in no file.',
  ],
  ['in no file', { id: 'a', pair, saved: null }, 'It is in no file.'],
  [
    'in the rack file',
    { id: 'a', pair, saved: pair, inRackFile: true },
    'The rack file holds it until the rack is saved.',
  ],
  ['new in the rack file', { id: 'a', pair, saved: null, inRackFile: true }, 'It is in no file.'],
  ['a pair of the program', demo, 'It came with the program.'],
  ['a pair of the program, changed', { ...demo, pair: { ...demo.pair, name: 'Mine' } }, 'It is in no file.'],
];

beforeEach(() => load(EMPTY_PROJECT));

test.each(WAYS)('a pair %s that is removed is told where it stands', (_, entry, reported) => {
  load({ ...EMPTY_PROJECT, rack: [entry] });
  remove(entry);
  expect(project.value.rack).toEqual([]);
  expect(status.value!.text).toBe(
    `${entry.pair.name} removed from the rack; undo brings it back. ${reported}`,
  );
  undo();
  expect(project.value.rack).toEqual([entry]);
});
