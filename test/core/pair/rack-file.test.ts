import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { type Pair, rackOf, readRack, writeRack } from '../../../core/pair/index.ts';

const rowan = {
  format: 'turnwright.pair',
  version: 1,
  name: 'Rowan 165',
  lengthMm: 1650,
  contactLengthMm: 1450,
  tipWidthMm: 115,
  waistWidthMm: 66.5,
  tailWidthMm: 100.5,
} as Pair;

const file = (change: object) =>
  JSON.stringify({
    format: 'turnwright.rack',
    version: 1,
    owner: 'Ostrelle',
    pairs: [rowan],
    tuneLog: [],
    ...change,
  });

describe('a rack file', () => {
  it('keeps a bad pair as it came and reports it by index', () => {
    const bad = { ...rowan, waistWidthMm: 130, lost: 'note' };
    const read = readRack(file({ pairs: [rowan, bad, 7, rowan] }));
    if (!read.ok) throw new Error('the rack must open');
    expect(read.rack.pairs.map(each => each.ok)).toEqual([true, false, false, true]);
    expect(read.problems.map(each => each.field)).toEqual(['pairs[1].waistWidthMm', 'pairs[2]']);
    expect(say(read.problems[0])).toBe(
      'pairs[1].waistWidthMm: 130 is wider than tipWidthMm 115; the waist must be the narrowest',
    );
    expect(JSON.parse(writeRack(read.rack)).pairs).toEqual([rowan, bad, 7, rowan]);
  });

  it('opens read-only when a newer version wrote it, and marks newer pairs', () => {
    const whole = readRack(file({ version: 3 }));
    expect(whole).toMatchObject({ ok: true, readOnly: true });
    const one = readRack(file({ pairs: [{ ...rowan, version: 2 }] }));
    expect(one).toMatchObject({ ok: true, readOnly: false, rack: { pairs: [{ ok: true, readOnly: true }] } });
    if (one.ok) expect(one.notes.map(note => say(note)).join()).toContain('newer version (2)');
  });

  it('checks tune entries: a real date and a pair to go with it', () => {
    const entries = [
      { pairName: 'Rowan 165', date: '2024-12-01', wax: 'cold' },
      { pairName: 'Rowan 165', date: '2024-02-30' },
      { date: '2024-12-01' },
      { pairId: 'r', date: '2024-12-01', sideAngleDeg: 45 },
    ];
    const read = readRack(file({ tuneLog: entries }));
    if (!read.ok) throw new Error('the rack must open');
    expect(read.problems.map(each => each.field)).toEqual([
      'tuneLog[1].date',
      'tuneLog[2].pairName',
      'tuneLog[3].sideAngleDeg',
    ]);
    expect(JSON.parse(writeRack(read.rack)).tuneLog).toEqual(entries);
  });

  it('refuses what is no rack', () => {
    expect(readRack('{}')).toMatchObject({
      ok: false,
      problems: [{ field: 'format' }, { field: 'version' }, { field: 'pairs' }],
    });
    expect(readRack('nothing')).toMatchObject({ ok: false, problems: [{ field: 'file' }] });
  });

  it('is made from pairs', () => {
    expect(readRack(writeRack(rackOf('Ostrelle', [rowan, rowan])))).toMatchObject({ ok: true, problems: [] });
  });
});
