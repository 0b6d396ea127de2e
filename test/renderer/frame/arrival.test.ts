import { beforeEach, describe, expect, it } from 'vitest';
import { season2024 } from '../../../core/rules/index.ts';
import { takeArrival } from '../../../renderer/frame/arrival.ts';
import { course, EMPTY_PROJECT, load, project, status, view } from '../../../renderer/state/index.ts';
import { edition } from '../../../renderer/views/rules/index.ts';

const arrive = (name: string, text: string) => takeArrival({ token: name, name, text });

describe('a file that arrives', () => {
  beforeEach(() => load(EMPTY_PROJECT));

  it('with gates is the set, and the set is shown', () => {
    arrive('today.csv', 'gate,across,down\n1,1,10\n2,-1,20\n');
    expect(course.value).toMatchObject({ name: 'today', gates: [{ y: 10 }, { y: 20 }] });
    expect(view.value.question).toBe('set');
  });

  it('with limits is an edition, or told why it is none', () => {
    arrive('club.json', JSON.stringify({ ...season2024, edition: 'Club cup' }));
    expect(edition.value.edition).toBe('Club cup');
    arrive('bad.json', JSON.stringify({ ...season2024, edition: '', limits: [] }));
    expect(status.value).toEqual({
      kind: 'error',
      text: 'bad.json is no edition of limits. edition: found ""; accepted is at least one character. (and 1 more)',
    });
    expect(edition.value.edition).toBe('Club cup');
  });

  it('with anything else is left to the rack', () => {
    arrive('squad.csv', 'name,length,contact length,tip,waist,tail\nLarch,1550,1360,111,66,97\n');
    expect(course.value.gates).toEqual([]);
    expect(project.value.rules.opened).toEqual([]);
  });
});
