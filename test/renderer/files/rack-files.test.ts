import { beforeEach, describe, expect, it } from 'vitest';
import { rackOf, readRack, writePair, writeRack } from '../../../core/pair/index.ts';
import {
  answer,
  importFile,
  saveAll,
  saveEntry,
  saveRack,
  waitingRacks,
} from '../../../renderer/files/index.ts';
import {
  addTune,
  changePair,
  EMPTY_PROJECT,
  edit,
  load,
  project,
  rackFileUnsaved,
  redo,
  removeEntry,
  status,
  tuneLogUnsaved,
  undo,
  unsavedEntries,
} from '../../../renderer/state/index.ts';
import { plainPair as pair } from '../plain-pair.ts';

/** A disk of a few files; `full` makes every write fail. */
const disk = { files: new Map<string, string>(), full: false };
const host = {
  kind: 'desktop',
  async save(token: string, text: string) {
    if (disk.full) throw new Error('squad could not be written: the disk is full');
    disk.files.set(token, text);
    return { token, name: token };
  },
  async saveAs(name: string, text: string) {
    return host.save(name, text);
  },
};
Object.assign(globalThis, { window: { turnwrightHost: host } });

const rackText = (...names: string[]) =>
  writeRack(
    rackOf(
      '',
      names.map(name => pair(name)),
    ),
  );
const open = (name: string, text: string) => {
  disk.files.set(name, text);
  importFile({ token: name, name, text });
};
const names = () => project.value.rack.map(entry => entry.pair.name);
const inFile = (name: string) => {
  const read = readRack(disk.files.get(name)!);
  return read.ok ? read.rack.pairs.map(each => each.ok && each.pair.name) : null;
};
const idOf = (name: string) => project.value.rack.find(entry => entry.pair.name === name)!.id;

beforeEach(() => {
  load(EMPTY_PROJECT);
  disk.files.clear();
  disk.full = false;
  waitingRacks.value = [];
  status.value = null;
});

describe('a second rack file', () => {
  beforeEach(() => {
    open('one.rack.json', rackText('Ash', 'Beech'));
    changePair(idOf('Ash'), 'Waist', { waistWidthMm: 65 });
    open('two.rack.json', rackText('Cedar'));
  });

  it('waits for an answer and changes nothing until then', async () => {
    expect(names()).toEqual(['Ash', 'Beech']);
    expect(waitingRacks.value.map(each => each.file.name)).toEqual(['two.rack.json']);
    await answer('leave');
    expect(names()).toEqual(['Ash', 'Beech']);
    expect(rackFileUnsaved.value).toBe(true);
  });

  it('is opened after the first is saved, and each file keeps its own pairs', async () => {
    await answer('save');
    expect(disk.files.get('one.rack.json')).toContain('"waistWidthMm": 65');
    expect(names()).toEqual(['Cedar']);
    await saveRack();
    expect(inFile('one.rack.json')).toEqual(['Ash', 'Beech']);
    expect(inFile('two.rack.json')).toEqual(['Cedar']);
  });

  it('stays waiting when the first could not be saved', async () => {
    disk.full = true;
    await answer('save');
    expect(names()).toEqual(['Ash', 'Beech']);
    expect(waitingRacks.value).toHaveLength(1);
    expect(status.value?.text).toContain('the disk is full');
    expect(rackFileUnsaved.value).toBe(true);
  });

  it('taken in place of the first comes undone as one step, file and all', async () => {
    await answer('replace');
    expect(names()).toEqual(['Cedar']);
    undo();
    expect(names()).toEqual(['Ash', 'Beech']);
    expect(project.value.rackFile?.name).toBe('one.rack.json');
    expect(rackFileUnsaved.value).toBe(true);
    await saveRack();
    expect(inFile('one.rack.json')).toEqual(['Ash', 'Beech']);
    expect(inFile('two.rack.json')).toEqual(['Cedar']);
    redo();
    expect(project.value.rackFile?.name).toBe('two.rack.json');
    expect(rackFileUnsaved.value).toBe(false);
  });

  it('joined to the first is written into the first and leaves its own file alone', async () => {
    await answer('join');
    expect(names()).toEqual(['Ash', 'Beech', 'Cedar']);
    expect(unsavedEntries.value.map(each => each.pair.name)).toContain('Cedar');
    await saveRack();
    expect(inFile('one.rack.json')).toEqual(['Ash', 'Beech', 'Cedar']);
    expect(inFile('two.rack.json')).toEqual(['Cedar']);
  });

  it('takes the log of the first with it and brings it back', async () => {
    edit('Tune', addTune(idOf('Beech'), { date: '2026-11-20', wax: 'cold' }, 'beech'));
    await answer('replace');
    expect(project.value.tuneLog).toEqual([]);
    undo();
    expect(project.value.tuneLog).toHaveLength(1);
  });
});

describe('saving and undoing', () => {
  it('keeps pairs in the rack file they were saved to, whatever is undone', async () => {
    open('ash.pair.json', writePair(pair('Ash')));
    open('beech.pair.json', writePair(pair('Beech')));
    changePair(idOf('Ash'), 'Waist', { waistWidthMm: 65 });
    edit('Remove Beech', removeEntry(idOf('Beech')));
    undo();
    await saveRack();
    expect(rackFileUnsaved.value).toBe(false);
    undo();
    expect(names()).toEqual(['Ash', 'Beech']);
    expect(rackFileUnsaved.value).toBe(true);
    await saveRack();
    expect(inFile('squad.rack.json')).toEqual(['Ash', 'Beech']);
    redo();
    await saveRack();
    expect(disk.files.get('squad.rack.json')).toContain('"waistWidthMm": 65');
  });

  it('an undone removal counts as a change of the saved file', async () => {
    open('one.rack.json', rackText('Ash', 'Beech'));
    edit('Remove Beech', removeEntry(idOf('Beech')));
    await saveRack();
    expect(inFile('one.rack.json')).toEqual(['Ash']);
    undo();
    expect(names()).toEqual(['Ash', 'Beech']);
    expect(rackFileUnsaved.value).toBe(true);
    await saveAll();
    expect(inFile('one.rack.json')).toEqual(['Ash', 'Beech']);
  });

  it('a copy of a pair saved elsewhere leaves the rack unsaved', async () => {
    open('one.rack.json', rackText('Ash'));
    changePair(idOf('Ash'), 'Waist', { waistWidthMm: 65 });
    expect(await saveEntry(idOf('Ash'), true)).toBe(true);
    expect(disk.files.get('ash.pair.json')).toContain('"waistWidthMm": 65');
    expect(rackFileUnsaved.value).toBe(true);
  });

  it('a tune log that no file holds counts as unsaved, and saving all puts it into a rack', async () => {
    open('ash.pair.json', writePair({ ...pair('Ash'), id: 'ash' }));
    edit('Tune', addTune(idOf('Ash'), { date: '2026-11-20', wax: 'cold' }, 'unused'));
    expect(unsavedEntries.value).toEqual([]);
    expect(tuneLogUnsaved.value).toBe(true);
    expect(await saveAll()).toBe(true);
    expect(disk.files.get('squad.rack.json')).toContain('"wax": "cold"');
    expect([tuneLogUnsaved.value, rackFileUnsaved.value]).toEqual([false, false]);
  });

  it('a failed save leaves everything unsaved and says why', async () => {
    open('ash.pair.json', writePair(pair('Ash')));
    changePair(idOf('Ash'), 'Waist', { waistWidthMm: 65 });
    disk.full = true;
    expect(await saveAll()).toBe(false);
    expect(unsavedEntries.value).toHaveLength(1);
    expect(status.value).toMatchObject({ kind: 'error', text: expect.stringContaining('the disk is full') });
  });
});

describe('a file that is in the rack already', () => {
  it('is pointed out, not taken in twice', () => {
    open('ash.pair.json', writePair(pair('Ash')));
    open('ash.pair.json', writePair(pair('Ash')));
    expect(names()).toEqual(['Ash']);
    expect(status.value?.text).toContain('in the rack already');
  });

  it('is read again when it was changed outside and nothing here would be lost', () => {
    open('ash.pair.json', writePair(pair('Ash')));
    open('ash.pair.json', writePair(pair('Ash', 64)));
    expect(project.value.rack.map(entry => entry.pair.waistWidthMm)).toEqual([64]);
    expect(unsavedEntries.value).toEqual([]);
  });

  it('stands beside the edited pair when both were changed, in no file', () => {
    open('ash.pair.json', writePair(pair('Ash')));
    changePair(idOf('Ash'), 'Waist', { waistWidthMm: 65 });
    open('ash.pair.json', writePair(pair('Ash', 64)));
    expect(project.value.rack.map(entry => [entry.pair.waistWidthMm, entry.fileToken])).toEqual([
      [65, 'ash.pair.json'],
      [64, undefined],
    ]);
    expect(status.value?.kind).toBe('error');
  });

  it('a rack open already and unchanged asks nothing', () => {
    open('one.rack.json', rackText('Ash'));
    open('one.rack.json', rackText('Ash'));
    expect(waitingRacks.value).toEqual([]);
    expect(names()).toEqual(['Ash']);
  });
});

describe('hostile files', () => {
  it.each([
    ['not JSON', '{"format":'],
    ['a list', '[1, 2, 3]'],
    ['another program’s', '{"format":"something else","version":1}'],
    ['nested past any use', `${'['.repeat(5000)}${']'.repeat(5000)}`],
    ['no number', writePair(pair('Ash')).replace('1650', '"1650"')],
    ['a prototype', '{"__proto__":{"format":"turnwright.pair"},"constructor":1}'],
  ])('%s: told by name, and the rack stays', (_, text) => {
    open('hostile.pair.json', text);
    expect(names()).toEqual([]);
    expect(status.value).toMatchObject({ kind: 'error', text: expect.stringContaining('hostile.pair.json') });
  });

  it('a newer version opens read-only, is not saved over, and can be saved elsewhere', async () => {
    open('ash.pair.json', writePair(pair('Ash')).replace('"version": 1', '"version": 2, "wings": true'));
    expect(changePair(idOf('Ash'), 'Waist', { waistWidthMm: 65 })).toBe(false);
    expect(await saveEntry(idOf('Ash'))).toBe(false);
    expect(await saveEntry(idOf('Ash'), true)).toBe(true);
    expect(disk.files.get('ash.pair.json')).toContain('"wings": true');
  });

  it('new pairs do not go into a rack file that may not be written', () => {
    open('one.rack.json', rackText('Ash').replace('"version": 1', '"version": 9'));
    expect(project.value.rackFile?.readOnly).toBe(true);
    expect(rackFileUnsaved.value).toBe(false);
  });
});
