import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { checkSetting, readGates } from '../../../../core/course/index.ts';
import { demoSets } from '../../../../renderer/demo/sets/index.ts';
import {
  changeConditions,
  changeCourse,
  course,
  courseUnsaved,
  EMPTY_PROJECT,
  load,
  moveGate,
  project,
  removeGate,
  status,
  undo,
} from '../../../../renderer/state/index.ts';
import {
  courseFileName,
  fileProblems,
  makeRhythmic,
  saveCourse,
  takeCourse,
  takeDemo,
} from '../../../../renderer/views/set/course-files.ts';

beforeEach(() => {
  load(EMPTY_PROJECT);
  fileProblems.value = null;
});

describe('gates from a file', () => {
  it('replace the set, with each row at fault told and nothing else lost', () => {
    takeCourse({
      name: 'today.csv',
      text: 'gate;across (m);down (m)\n1;1,5;10\n2;-1,5;here\n3;1,5;30\n4;-1,5;\n5;1,5;40\n6;-1,5;50\n',
    });
    expect(course.value).toMatchObject({ name: 'today', discipline: 'SL', demo: false });
    expect(course.value.gates.map(gate => [gate.label, gate.x, gate.y])).toEqual([
      ['1', 1.5, 10],
      ['3', 1.5, 30],
      ['5', 1.5, 40],
      ['6', -1.5, 50],
    ]);
    expect(fileProblems.value?.problems.map(each => [each.row, each.field, each.found])).toEqual([
      [3, 'down', '"here"'],
      [5, 'down', 'nothing'],
    ]);
    undo();
    expect(course.value.gates).toEqual([]);
  });

  it('leave the set alone when there is not one gate', () => {
    takeDemo('GS');
    takeCourse({ name: 'notes.csv', text: 'a,b\n1,2\n' });
    expect(course.value).toEqual(demoSets.GS);
    expect(status.value?.kind).toBe('error');
  });

  it('are guessed a giant slalom by their spacing', () => {
    takeCourse({ name: 'gs.csv', text: 'gate,x,y\n1,4,25\n2,-4,50\n3,4,75\n' });
    expect(course.value.discipline).toBe('GS');
  });
});

describe('demo and rhythmic sets', () => {
  it('come with the slope they were set on, in one step', () => {
    takeDemo('GS');
    expect(course.value).toMatchObject({ slopeDeg: 16.5, speedKmh: 50, keepSpeed: true });
    expect(project.value.conditions).toBe(EMPTY_PROJECT.conditions);
    undo();
    expect(course.value).toBe(EMPTY_PROJECT.course);
    expect(course.value.gates).toEqual([]);
  });

  it('follow the sliders', () => {
    makeRhythmic();
    const { gates, gateSpacingM, gateOffsetM } = project.value.conditions;
    expect(course.value.gates).toHaveLength(gates);
    expect(course.value.gates[1].y - course.value.gates[0].y).toBeCloseTo(gateSpacingM, 9);
    expect(course.value.gates[0].x - course.value.gates[1].x).toBeCloseTo(gateOffsetM, 9);
  });

  it('keep the slope and speed asked about where only gates come in', () => {
    takeDemo('GS');
    changeCourse('Slope', before => ({ ...before, slopeDeg: 12, category: 'U16 girls' }));
    makeRhythmic();
    expect(course.value).toMatchObject({ slopeDeg: 12, speedKmh: 50, name: 'Rhythmic set 10 m by 3 m' });
    takeCourse({ name: 'today.csv', text: 'gate,x,y\n1,1,10\n2,-1,20\n' });
    expect(course.value).toMatchObject({ slopeDeg: 12, speedKmh: 50 });
    takeDemo('SL');
    expect(course.value).toMatchObject({ slopeDeg: 20, speedKmh: 30, category: 'U16 girls' });
  });

  it('pass the setting rules as they come', () => {
    for (const { gates, discipline, slopeDeg } of [demoSets.SL, demoSets.GS]) {
      const slope = (slopeDeg * Math.PI) / 180;
      const failed = checkSetting(gates, { discipline, category: 'men', slope, gateWidth: 5 }).items.filter(
        item => item.verdict === 'fails',
      );
      expect(failed.map(item => item.rule)).toEqual([]);
    }
  });
});

describe('a set in no file', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is asked about on closing until it is saved, and again once a gate has moved', async () => {
    const saved: string[] = [];
    let chosen = true;
    const exportFile = async (name: string, _mime: string, data: string) => {
      saved.push(name, data);
      return chosen;
    };
    vi.stubGlobal('window', { turnwrightHost: { exportFile } });
    takeDemo('SL');
    expect(courseUnsaved.value).toBe(false);
    changeCourse('Gate 1', moveGate(0, { x: 2 }));
    expect(courseUnsaved.value).toBe(true);
    await saveCourse();
    expect(courseUnsaved.value).toBe(false);
    expect(saved[0]).toBe('pala-ostrelle-slalom.csv');
    expect(readGates(saved[1]).gates).toEqual(course.value.gates);
    changeConditions('Mass', { massKg: 60 });
    undo();
    expect(courseUnsaved.value).toBe(false);
    undo();
    expect(courseUnsaved.value).toBe(false);
    changeCourse('Remove', removeGate(1));
    expect(courseUnsaved.value).toBe(true);
    chosen = false;
    // The window was closed without a file.
    await saveCourse();
    expect(courseUnsaved.value).toBe(true);
  });

  it('is called by its name and by what it is', () => {
    expect(courseFileName({ name: 'today', discipline: 'GS' })).toBe('today-giant-slalom.csv');
    expect(courseFileName({ name: 'Tuesday slalom', discipline: 'SL' })).toBe('tuesday-slalom.csv');
    expect(courseFileName({ name: '', discipline: 'SL' })).toBe('set-slalom.csv');
  });
});
