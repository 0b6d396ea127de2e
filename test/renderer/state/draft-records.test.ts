import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { demoEntries } from '../../../renderer/rack/index.ts';
import {
  type DraftRecords,
  draftChanges,
  draftOf,
  EMPTY_PROJECT,
  type Project,
  projectFromRecords,
} from '../../../renderer/state/index.ts';

let start: Project;
beforeEach(() => {
  start = { ...EMPTY_PROJECT, rack: demoEntries() };
});

function applied(records: DraftRecords, changes: Readonly<Record<string, string | null>>): DraftRecords {
  const next = Object.entries({ ...records, ...changes }).filter(([, text]) => text !== null);
  return Object.fromEntries(next) as DraftRecords;
}

const renamed = (value: Project, at: number, name: string): Project => ({
  ...value,
  rack: value.rack.map((entry, i) => (i === at ? { ...entry, pair: { ...entry.pair, name } } : entry)),
});

describe('a draft in records', () => {
  test('comes back as it was, and says that nothing needs writing', () => {
    const records = applied({}, draftChanges(null, start));
    const read = projectFromRecords(records);
    expect(read.project).toEqual(start);
    expect(read.whole).toBe(true);
  });

  test('an edit of one pair among many writes that pair alone', () => {
    expect(Object.keys(draftChanges(start, renamed(start, 3, 'New name')))).toEqual([
      `pair/${start.rack[3]!.id}`,
    ]);
    const slower = { ...start, conditions: { ...start.conditions, speedKmh: 21 } };
    expect(Object.keys(draftChanges(start, slower))).toEqual(['rest']);
    expect(draftChanges(start, start)).toEqual({});
  });

  test('whatever is edited, the records follow', () => {
    const step = fc.oneof(
      fc.record({ kind: fc.constant('rename'), at: fc.nat(7), name: fc.uuid() }),
      fc.record({ kind: fc.constant('remove'), at: fc.nat(7), name: fc.constant('') }),
      fc.record({ kind: fc.constant('reverse'), at: fc.constant(0), name: fc.constant('') }),
      fc.record({ kind: fc.constant('add'), at: fc.nat(7), name: fc.uuid() }),
      fc.record({ kind: fc.constant('turn'), at: fc.nat(9), name: fc.constant('') }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), steps => {
        let now = start;
        let records = applied({}, draftChanges(null, now));
        for (const { kind, at, name } of steps) {
          const before = now;
          const entry = now.rack[at % Math.max(1, now.rack.length)];
          if (kind === 'rename') now = renamed(now, at, name);
          else if (kind === 'remove') now = { ...now, rack: now.rack.filter((_, i) => i !== at) };
          else if (kind === 'reverse') now = { ...now, rack: [...now.rack].reverse() };
          else if (kind === 'add' && entry) now = { ...now, rack: [...now.rack, { ...entry, id: name }] };
          else now = { ...now, conditions: { ...now.conditions, turns: at + 2 } };
          records = applied(records, draftChanges(before, now));
        }
        const again = projectFromRecords(records).project!;
        expect(again.conditions).toEqual(now.conditions);
        expect(again.rack.map(({ id }) => id)).toEqual(now.rack.map(({ id }) => id));
      }),
      { numRuns: 60 },
    );
  });

  test('one damaged record costs that record, which is kept word for word', () => {
    const records = { ...applied({}, draftChanges(null, start)) };
    const key = `pair/${start.rack[2]!.id}`;
    records[key] = records[key]!.slice(0, 40);
    const { project, whole } = projectFromRecords(records);
    expect(project!.rack).toHaveLength(start.rack.length - 1);
    expect(project!.unreadable.map(each => each.text)).toContain(records[key]);
    expect(whole).toBe(false);
    // Written anew, the damaged record is gone and what it held is still set aside.
    const next = applied(records, draftChanges(null, project!, Object.keys(records)));
    const later = projectFromRecords(next);
    expect(later.project!.unreadable).toHaveLength(1);
    expect(later.whole).toBe(true);
  });

  test('what an earlier start kept under its earlier name is still there', () => {
    const kept = { id: 'draft', name: 'Last work', fileName: 'work.json', why: 'damaged', text: '{"half":' };
    const { unreadable: _, ...records } = applied({}, draftChanges(null, start));
    const back = projectFromRecords({ ...records, setAside: JSON.stringify([kept]) });
    expect(back.project!.unreadable).toEqual([kept]);
    const text = draftOf(start).replace('"unreadable":[]', `"setAside":${JSON.stringify([kept])}`);
    expect(projectFromRecords({ whole: text }).project!.unreadable).toEqual([kept]);
  });

  test('a pair that the order does not know is a pair all the same', () => {
    const { order: _, ...records } = applied({}, draftChanges(null, start));
    expect(projectFromRecords(records).project!.rack).toHaveLength(start.rack.length);
  });

  test('the draft of the first versions is taken up', () => {
    const { project, whole } = projectFromRecords({ whole: draftOf(start) });
    expect(project).toEqual(start);
    expect(whole).toBe(false);
    expect(projectFromRecords({ whole: '{"half":' }).unreadable[0]!.text).toBe('{"half":');
  });

  test('none is none, and one of another version is set aside', () => {
    expect(projectFromRecords(null)).toEqual({
      project: null,
      unreadable: [],
      whole: false,
      notTaken: [],
    });
    const other = projectFromRecords({ rest: '{"version":99}', 'pair/a': '{"id":"a"}' });
    expect(other.project).toBeNull();
    expect(other.unreadable[0]!.why).toContain('99');
    expect(other.unreadable[0]!.text).toContain('"id":"a"');
  });
});
