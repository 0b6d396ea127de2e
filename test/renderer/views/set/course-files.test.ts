import { beforeEach, describe, expect, it } from 'vitest';
import { demoSets } from '../../../../renderer/demo/sets/index.ts';
import { course, EMPTY_PROJECT, load, project, status, undo } from '../../../../renderer/state/index.ts';
import {
  fileProblems,
  makeRhythmic,
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
    expect(course.value).toBe(demoSets.GS);
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
    expect(project.value.conditions.slopeDeg).toBe(16.5);
    undo();
    expect(project.value.conditions.slopeDeg).toBe(EMPTY_PROJECT.conditions.slopeDeg);
    expect(course.value.gates).toEqual([]);
  });

  it('follow the sliders', () => {
    makeRhythmic();
    const { gates, gateSpacingM, gateOffsetM } = project.value.conditions;
    expect(course.value.gates).toHaveLength(gates);
    expect(course.value.gates[1].y - course.value.gates[0].y).toBeCloseTo(gateSpacingM, 9);
    expect(course.value.gates[0].x - course.value.gates[1].x).toBeCloseTo(gateOffsetM, 9);
  });
});
