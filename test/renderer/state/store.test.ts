import { beforeEach, describe, expect, it } from 'vitest';
import {
  addEntries,
  amendAllSteps,
  changeConditions,
  changeCourse,
  changePair,
  changeView,
  choose,
  chooseOnly,
  chosenPairs,
  course,
  DEFAULT_CONDITIONS,
  draftOf,
  EMPTY_PROJECT,
  edit,
  letterFree,
  load,
  markSaved,
  moveGate,
  project,
  projectFrom,
  putGate,
  removeEntry,
  removeGate,
  status,
  unchoose,
  undo,
  undoLabel,
  unsavedEntries,
} from '../../../renderer/state/index.ts';
import { plainPair as pair } from '../plain-pair.ts';

const entry = (id: string) => {
  const own = pair(id);
  return { id, pair: own, saved: own };
};

beforeEach(() => {
  status.value = null;
  load(addEntries(['p', 'q', 'r', 's', 't'].map(entry))(EMPTY_PROJECT));
});

describe('the project', () => {
  it('gives letters in the order of choosing and frees them again', () => {
    edit('choose', choose('q'));
    edit('choose', choose('r'));
    expect(chosenPairs.value.map(each => [each.mark.letter, each.id])).toEqual([
      ['A', 'p'],
      ['B', 'q'],
      ['C', 'r'],
    ]);
    edit('let go', unchoose('q'));
    edit('choose', choose('s'));
    expect(chosenPairs.value.map(each => [each.mark.letter, each.id])).toEqual([
      ['A', 'p'],
      ['B', 's'],
      ['C', 'r'],
    ]);
  });

  it('chooses four pairs and no more', () => {
    for (const id of ['q', 'r', 's']) edit('choose', choose(id));
    expect(letterFree(project.value)).toBe(false);
    const before = project.value;
    edit('choose', choose('t'));
    expect(project.value).toBe(before);
  });

  it('brings a removed pair back with its letter', () => {
    edit('Remove p', removeEntry('p'));
    expect(chosenPairs.value).toEqual([]);
    undo();
    expect(chosenPairs.value.map(each => each.id)).toEqual(['p']);
  });

  it('refuses an edit that makes no ski, says why, and keeps the last good pair', () => {
    expect(changePair('p', 'Waist width', { waistWidthMm: 130 })).toBe(false);
    expect(status.value?.text).toContain('Waist: 130');
    expect(status.value?.kind).toBe('error');
    expect(chosenPairs.value[0]?.pair.waistWidthMm).toBe(66);
    expect(undoLabel.value).toBeNull();
  });

  it('does not edit a read-only pair', () => {
    load({ ...project.value, rack: [{ ...entry('p'), readOnly: 'newer version' }] });
    expect(changePair('p', 'Waist width', { waistWidthMm: 65 })).toBe(false);
    expect(status.value?.text).toContain('newer version');
  });

  it('derives SI values from the pair in force', () => {
    changePair('p', 'Waist width', { waistWidthMm: 64 });
    expect(chosenPairs.value[0]?.ski.waistWidth).toBeCloseTo(0.064, 12);
  });

  it('keeps the view and what was saved when a step is undone', () => {
    changePair('p', 'Waist width', { waistWidthMm: 64 });
    const changed = project.value.rack[0]!.pair;
    amendAllSteps(markSaved('p', changed, { token: 'file-1', name: 'p.pair.json' }));
    changeView({ theme: 'night' });
    expect(unsavedEntries.value).toEqual([]);
    undo();
    expect(project.value.view.theme).toBe('night');
    expect(project.value.rack[0]?.fileToken).toBe('file-1');
    expect(unsavedEntries.value.map(each => each.id)).toEqual(['p']);
  });

  it('makes one undo step of a slider drag', () => {
    for (const edgeDeg of [51, 52, 53]) changeConditions('Edge angle', { edgeDeg }, 'edgeDeg');
    expect(undoLabel.value).toBe('Edge angle');
    undo();
    expect(project.value.conditions.edgeDeg).toBe(DEFAULT_CONDITIONS.edgeDeg);
  });
});

describe('the set of gates', () => {
  const gate = (label: string, x: number, y: number) => ({ label, x, y, colour: null, turn: null });

  it('is put, moved and removed in steps that undo takes back, a drag being one', () => {
    changeCourse('Add gate', putGate(0, gate('1', 1, 10)));
    changeCourse('Add gate', putGate(1, gate('2', -1, 20)));
    for (const x of [1.5, 2, 2.5]) changeCourse('Gate 1', moveGate(0, { x }), 'gate 0');
    expect(course.value.gates.map(each => each.x)).toEqual([2.5, -1]);
    changeCourse('Remove gate', removeGate(1));
    expect(course.value.gates.map(each => each.label)).toEqual(['1']);
    undo();
    undo();
    expect(course.value.gates.map(each => each.x)).toEqual([1, -1]);
  });

  it('is demo data until a gate of it is changed', () => {
    load({ ...project.value, course: { ...course.value, demo: true, gates: [gate('1', 1, 10)] } });
    changeCourse('Gate 1', moveGate(0, { y: 11 }));
    expect(course.value.demo).toBe(false);
  });

  it('comes back from the draft, without the gates that are none', () => {
    changeCourse('Add gate', putGate(0, gate('1', 1, 10)));
    changeCourse('Add gate', putGate(1, { ...gate('2', -1, 20), turn: 1, colour: 'blue' }));
    expect(projectFrom(draftOf(project.value))!.course).toEqual(course.value);
    const broken = draftOf(project.value).replace('"x":1,', '"x":"one",');
    expect(projectFrom(broken)!.course.gates.map(each => each.label)).toEqual(['2']);
  });
});

describe('the draft', () => {
  it('comes back as it was written', () => {
    edit('choose', chooseOnly(['r', 'p']));
    changePair('r', 'Waist width', { waistWidthMm: 63 });
    changeConditions('Load', { loadN: 900 });
    changeView({ system: 'imperial' });
    const back = projectFrom(draftOf(project.value));
    expect(back).toEqual(project.value);
    expect(back!.rack[0]!.saved).toBe(back!.rack[0]!.pair);
    expect(back!.rack[2]!.saved).not.toBe(back!.rack[2]!.pair);
  });

  it('is no project when it is no draft', () => {
    for (const text of [null, '', '{', '[]', 'null', '{"version":99}']) expect(projectFrom(text)).toBeNull();
  });

  it('drops what fails its check and keeps the rest', () => {
    const text = draftOf(project.value)
      .replace('"waistWidthMm":66', '"waistWidthMm":666')
      .replace('"edgeDeg":50', '"edgeDeg":"steep"')
      .replace('"theme":"snow"', '"theme":"plaid"');
    const back = projectFrom(text)!;
    expect(back.rack.map(each => each.id)).toEqual(['q', 'r', 's', 't']);
    expect(back.chosen).toEqual([null, null, null, null]);
    expect(back.conditions.edgeDeg).toBe(DEFAULT_CONDITIONS.edgeDeg);
    expect(back.view.theme).toBe('snow');
  });
});
