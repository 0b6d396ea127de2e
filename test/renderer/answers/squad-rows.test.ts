import { beforeEach, describe, expect, it } from 'vitest';
import type { Pair } from '../../../core/pair/index.ts';
import { oddIn, squadRows } from '../../../renderer/answers/squad-rows.ts';
import { tuneText } from '../../../renderer/answers/tune-text.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import { AS_IN_RACK, arrange, NO_OWNER } from '../../../renderer/squad/arrange.ts';
import { readTune, type TuneDraft } from '../../../renderer/squad/tune-draft.ts';
import {
  addTune,
  DEFAULT_DUE,
  draftOf,
  EMPTY_PROJECT,
  edit,
  load,
  type Project,
  project,
  projectFrom,
  removeTune,
  tuneLogInFile,
  tunesOf,
  undo,
  withOwner,
} from '../../../renderer/state/index.ts';

const [larch, rowan, alder] = demoPairs as [Pair, Pair, Pair];
const entry = (id: string, pair: Pair) => ({ id, pair, saved: pair });
const rack = [entry('1', withOwner(larch, 'Ada')), entry('2', withOwner(rowan, 'Bruno')), entry('3', alder)];
const names = (by: object) =>
  arrange(squadRows(rack, [], DEFAULT_DUE, '2025-01-08'), { ...AS_IN_RACK, ...by }).map(row => row.entry.id);

describe('the squad arranged', () => {
  it('is found by any words of name, owner, discipline and length', () => {
    expect(names({ words: 'ADA sl' })).toEqual(['1']);
    expect(names({ words: 'sl' })).toEqual(['1', '2']);
    expect(names({ owner: NO_OWNER })).toEqual(['3']);
    expect(names({ discipline: 'GS' })).toEqual(['3']);
    expect(names({ words: 'nobody' })).toEqual([]);
  });

  it('is sorted both ways, what is not known last', () => {
    expect(names({ sort: 'length', down: true })[0]).toBe('3');
    expect(names({ sort: 'owner' })).toEqual(['1', '2', '3']);
    expect(names({ sort: 'owner', down: true })).toEqual(['2', '1', '3']);
  });

  it('flags duplicates and missing owners in words', () => {
    const odd = oddIn([...rack, entry('4', withOwner(larch, 'Ada'))]);
    expect(odd.get(4)).toEqual(['the same name, owner and measurements as line 1']);
    expect(odd.get(3)).toEqual(['no owner given']);
    expect(odd.get(1)).toBeUndefined();
  });
});

describe('the tune log', () => {
  const { id: _none, ...nameless } = larch;
  const twins = [entry('1', nameless as Pair), entry('2', nameless as Pair)];
  beforeEach(() => load({ ...EMPTY_PROJECT, rack: twins }));

  it('stays with its pair by id, also where two share a name, and can be undone', () => {
    edit('Tune', addTune('1', { date: '2025-01-07', wax: 'cold' }, 'fresh-id'));
    const [one, other] = project.value.rack;
    expect(tunesOf(project.value.tuneLog, one!.pair)).toHaveLength(1);
    expect(tunesOf(project.value.tuneLog, other!.pair)).toHaveLength(0);
    undo();
    expect(project.value.tuneLog).toEqual([]);
  });

  it('survives the draft', () => {
    edit('Tune', addTune('1', { date: '2025-01-07', sideAngleDeg: 87 }, 'fresh-id'));
    const back = projectFrom(draftOf(project.value))!;
    expect(back.tuneLog).toEqual(project.value.tuneLog);
    expect(back.dueAfter).toEqual(DEFAULT_DUE);
  });

  it('lets an entry be taken out', () => {
    edit('Tune', addTune('1', { date: '2025-01-07', wax: 'cold' }, 'fresh-id'));
    const [tune] = tunesOf(project.value.tuneLog, project.value.rack[0]!.pair);
    edit('Take out', removeTune(tune!));
    expect(project.value.tuneLog).toEqual([]);
  });

  it('puts into the rack file what came from it and what belongs to its pairs', () => {
    const stray = { ok: true as const, entry: { pairId: 'gone', date: '2024-01-01', wax: 'old' } };
    const unread = { ok: false as const, index: 1, raw: { date: 'soon' }, problems: [] };
    const own = { ok: true as const, entry: { pairName: larch.name, date: '2025-01-01', wax: 'warm' } };
    const foreign = { ok: true as const, entry: { pairName: 'Elsewhere', date: '2025-01-01', wax: 'warm' } };
    const file = { owner: '', pairs: [], tuneLog: [stray, unread], rest: {} };
    const now: Project = {
      ...EMPTY_PROJECT,
      rack: [{ ...twins[0]!, inRackFile: true }],
      rackFile: { token: 't', name: 'squad.rack.json', rack: file, savedIds: ['1'], readOnly: false },
      tuneLog: [stray, unread, own, foreign],
    };
    expect(tuneLogInFile(now)).toEqual([stray, unread, own]);
  });
});

describe('the tune form', () => {
  const blank: TuneDraft = { date: '2025-01-08', side: '', base: '', wax: '', structure: '', note: '' };

  it('reads degrees with a comma or a sign', () => {
    const read = readTune({ ...blank, side: '87,5', base: '0.7°', wax: ' cold ' }, '2025-01-08');
    expect(read).toEqual({
      ok: true,
      done: { date: '2025-01-08', sideAngleDeg: 87.5, baseBevelDeg: 0.7, wax: 'cold' },
    });
    expect(read.ok && tuneText({ pairName: 'x', ...read.done })).toBe('side 87.5°, base 0.7°, wax cold');
  });

  it.each([
    ['side', '45', '80 to 90'],
    ['base', 'flat', '0 to 5'],
    ['date', '2025-01-09', 'up to today'],
    ['date', 'monday', 'a day such as'],
  ])('refuses %s "%s" and says what is accepted', (field, text, accepted) => {
    const read = readTune({ ...blank, wax: 'cold', [field]: text }, '2025-01-08');
    expect(!read.ok && read.messages[field as keyof TuneDraft]).toContain(accepted);
    expect(!read.ok && read.messages[field as keyof TuneDraft]).toContain(text);
  });

  it('asks for something to log', () => {
    expect(readTune(blank, '2025-01-08').ok).toBe(false);
  });
});
