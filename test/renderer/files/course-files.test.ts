import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { checkSetting, readGates } from '../../../core/course/index.ts';
import { demoSets } from '../../../renderer/demo/index.ts';
import { courseFileName, fileProblems, saveCourse, takeCourse } from '../../../renderer/files/index.ts';
import {
  changeConditions,
  changeCourse,
  course,
  courseUnsaved,
  EMPTY_PROJECT,
  load,
  moveGate,
  project,
  redo,
  removeGate,
  status,
  undo,
} from '../../../renderer/state/index.ts';
import { makeRhythmic, takeDemo } from '../../../renderer/views/set/course-sources.ts';

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
      [5, 'down', undefined],
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
    expect(course.value).toMatchObject({ slopeDeg: 16.5, speedKmh: 50, keepSpeed: false });
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
    // The speed was the usual one of a giant slalom; these gates are a slalom's.
    expect(course.value).toMatchObject({ slopeDeg: 12, speedKmh: 30, name: 'Rhythmic set 8 m by 2.4 m' });
    takeCourse({ name: 'today.csv', text: 'gate,x,y\n1,1,10\n2,-1,20\n' });
    expect(course.value).toMatchObject({ slopeDeg: 12, speedKmh: 30 });
    takeDemo('SL');
    expect(course.value).toMatchObject({ slopeDeg: 20, speedKmh: 30, category: 'U16 girls' });
  });

  it('pass the setting rules as they come', () => {
    for (const { gates, discipline, slopeDeg } of [demoSets.SL, demoSets.GS]) {
      const slope = (slopeDeg * Math.PI) / 180;
      const asked = { discipline, category: 'children', slope, gateWidth: 5 } as const;
      const failed = checkSetting(gates, asked).items.filter(item => item.verdict === 'fails');
      expect(failed.map(item => item.rule)).toEqual([]);
    }
  });
});

describe('a set in no file', () => {
  const saved: string[] = [];
  let chosen = true;
  const exportFile = async (name: string, _mime: string, data: string) => {
    // What a spreadsheet needs to know it for UTF-8.
    expect(data.startsWith('\uFEFF')).toBe(true);
    saved.push(name, data.slice(1));
    return chosen;
  };
  beforeEach(() => {
    saved.length = 0;
    chosen = true;
    vi.stubGlobal('window', { turnwrightHost: { exportFile } });
  });
  afterEach(() => vi.unstubAllGlobals());

  it('is asked about on closing until it is saved, and again once a gate has moved', async () => {
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
    // The demo gates as they came are nobody's work.
    expect(courseUnsaved.value).toBe(false);
    redo();
    expect(courseUnsaved.value).toBe(false);
    // A step back to gates that the file does not hold any more, and its slope is in the file too.
    changeCourse('Gate 1', moveGate(0, { x: 3 }));
    await saveCourse();
    undo();
    expect(courseUnsaved.value).toBe(true);
    redo();
    expect(courseUnsaved.value).toBe(false);
    changeCourse('Slope', before => ({ ...before, slopeDeg: 21 }));
    expect(courseUnsaved.value).toBe(true);
    await saveCourse();
    expect(courseUnsaved.value).toBe(false);
    changeCourse('Remove', removeGate(1));
    expect(courseUnsaved.value).toBe(true);
    chosen = false;
    // The window was closed without a file.
    await saveCourse();
    expect(courseUnsaved.value).toBe(true);
  });

  it('comes back from its file as it was, with what the file was not asked to know', async () => {
    takeCourse({ name: 'today.csv', text: '# wet\ngate,x,y,notes\n1,1,10,ice\n2,-1,20,\n' });
    expect(courseUnsaved.value).toBe(false);
    changeCourse('All', before => ({
      ...before,
      discipline: 'GS',
      slopeDeg: 17.5,
      speedKmh: 41,
      keepSpeed: false,
      greatestEdgeDeg: 60,
      gateWidthM: 5,
      category: 'U14 girls',
    }));
    await saveCourse();
    const [, written] = saved;
    const before = course.value;
    load(EMPTY_PROJECT);
    takeCourse({ name: 'today.csv', text: written });
    expect(course.value).toEqual(before);
    expect(before.gates[0].others).toEqual([['notes', 'ice']]);
    expect(written.startsWith('# wet\n')).toBe(true);
  });

  it('saved over its file keeps the rows and values that could not be read', async () => {
    const rows = ['2;-1,5;here;', '4;;;', '5;1,5;50;'];
    takeCourse({
      name: 'today.csv',
      text: `# wet\ngate;across (m);down (m);slope\n1;1,5;10;steep\n${rows.join('\n')}\n6;-1,5;60;\n`,
    });
    expect(course.value.gates.map(gate => gate.label)).toEqual(['1', '5', '6']);
    changeCourse('Gate 1', moveGate(0, { x: 2 }));
    await saveCourse();
    const [, written] = saved;
    expect(written.split('\n').slice(0, 4)).toEqual([
      '# wet',
      '# not read (slope): 1;1,5;10;steep',
      '# not read (down): 2;-1,5;here;',
      '# not read (across, down): 4;;;',
    ]);
    const before = course.value;
    takeCourse({ name: 'today.csv', text: written });
    expect(fileProblems.value).toBeNull();
    expect(course.value).toEqual(before);
  });

  it('with a category nobody races in keeps the one before, says so and keeps the word in the file', async () => {
    takeCourse({ name: 'today.csv', text: 'gate,x,y,category\n1,1,10,masters\n2,-1,20,\n' });
    expect(course.value.category).toBe('U16 boys');
    expect(status.value).toMatchObject({ kind: 'error', text: expect.stringContaining('"masters"') });
    await saveCourse();
    expect(saved[1]).toMatch(/^# not read \(category\): masters\n/);
  });

  it('is called by its name and by what it is', () => {
    expect(courseFileName({ name: 'today', discipline: 'GS' })).toBe('today-giant-slalom.csv');
    expect(courseFileName({ name: 'Tuesday slalom', discipline: 'SL' })).toBe('tuesday-slalom.csv');
    expect(courseFileName({ name: '', discipline: 'SL' })).toBe('set-slalom.csv');
  });
});
