import { beforeEach, expect, test } from 'vitest';
import { readPair } from '../../../core/pair/index.ts';
import {
  addEntries,
  changeCourse,
  dismiss,
  draftAside,
  draftOf,
  EMPTY_PROJECT,
  edit,
  load,
  project,
  projectFrom,
  putGate,
  undo,
} from '../../../renderer/state/index.ts';
import { plainPair as pair } from '../plain-pair.ts';

beforeEach(() => {
  load(EMPTY_PROJECT);
  edit('Add', addEntries(['Ash', 'Beech'].map(name => ({ id: name, pair: pair(name), saved: null }))));
});

/** The draft with Ash's waist wider than any check allows, as a later, stricter program would find it. */
const failing = () => draftOf(project.value).replace('"waistWidthMm":66', '"waistWidthMm":666');

test('a pair that fails its check is set aside whole, with the reason and a file name', () => {
  const back = projectFrom(failing())!;
  expect(back.rack.map(entry => entry.id)).toEqual(['Beech']);
  expect(back.unreadable).toHaveLength(1);
  const [aside] = back.unreadable;
  expect(aside).toMatchObject({ id: 'Ash', name: 'Ash', fileName: 'ash.pair.json' });
  expect(aside!.why).toMatch(/Waist.*666/);
  expect(JSON.parse(aside!.text)).toEqual({ ...pair('Ash'), waistWidthMm: 666 });
});

test('what is set aside lasts from draft to draft until it is taken off, and undo brings it back', () => {
  load(projectFrom(failing())!);
  load(projectFrom(draftOf(project.value))!);
  const kept = project.value.unreadable;
  expect(kept.map(each => each.name)).toEqual(['Ash']);
  edit('Take off', dismiss('Ash'));
  expect(projectFrom(draftOf(project.value))!.unreadable).toEqual([]);
  undo();
  expect(project.value.unreadable).toEqual(kept);
});

test('a pair set aside returns to the rack once it passes, under an id of its own', () => {
  const back = projectFrom(failing())!;
  const mended = { ...back.unreadable[0]!, id: 'Beech', text: JSON.stringify(pair('Ash')) };
  const again = projectFrom(draftOf({ ...back, unreadable: [mended] }))!;
  expect(again.unreadable).toEqual([]);
  expect(again.rack.map(entry => entry.pair.name)).toEqual(['Beech', 'Ash']);
  expect(new Set(again.rack.map(entry => entry.id)).size).toBe(2);
  expect(again.rack[1]!.saved).toBeNull();
});

test('an entry without an id, gates, a rack file and a tune log that cannot be read are kept as well', () => {
  changeCourse('Gate', putGate(0, { label: '1', x: 1, y: 2, colour: null, turn: null }));
  const draft = JSON.parse(draftOf(project.value));
  draft.rack[0].id = undefined;
  draft.course.gates.push({ label: '2', x: 'one', y: 3 });
  draft.rackFile = { token: 't', name: 'juniors.rack.json', rack: '{"format":"other"}' };
  draft.tuneLog = 'no log';
  const back = projectFrom(JSON.stringify(draft))!;
  expect(back.rack.map(entry => entry.pair.name)).toEqual(['Ash', 'Beech']);
  expect(back.course.gates).toHaveLength(1);
  expect(back.unreadable.map(each => each.fileName)).toEqual([
    'juniors.rack.json',
    'tune-log.rack.json',
    'set-of-gates.json',
  ]);
  expect(back.unreadable[0]!.text).toBe('{"format":"other"}');
  expect(back.unreadable[1]!.text).toBe('no log');
  expect(JSON.parse(back.unreadable[2]!.text).gates).toHaveLength(2);
  for (const { why } of back.unreadable) expect(why).not.toBe('');
});

test('a draft of a newer version and a damaged one are kept word for word; no draft is nothing', () => {
  for (const text of ['{"version":99,"pairs":[1]}', '{"version":1,"rack":[']) {
    expect(projectFrom(text)).toBeNull();
    const [aside] = draftAside(text);
    expect(aside!.text).toBe(text);
    const later = projectFrom(draftOf({ ...EMPTY_PROJECT, unreadable: [aside!] }))!;
    expect(later.unreadable).toEqual([aside]);
  }
  expect(draftAside('{"version":99}')[0]!.why).toContain('99');
  expect(draftAside(null)).toEqual([]);
  expect(draftAside('')).toEqual([]);
});

test('a sound draft sets nothing aside', () => {
  expect(readPair(JSON.stringify(pair('Ash'))).ok).toBe(true);
  expect(projectFrom(draftOf(project.value))!.unreadable).toEqual([]);
});
