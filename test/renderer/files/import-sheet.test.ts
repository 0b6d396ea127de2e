import { describe, expect, it } from 'vitest';
import { checkPair, rackOf, readRack, readSheet, writeRack } from '../../../core/pair/index.ts';
import { readCsvRows } from '../../../core/table/index.ts';
import { entriesOf, faultSheet, lookOver } from '../../../renderer/files/import-sheet.ts';
import { READ } from '../../../renderer/files/reading.ts';
import { extraOf, ownerOf, withOwner } from '../../../renderer/state/index.ts';

const HEAD =
  'owner;name;discipline;length (cm);contact length (mm);tip (mm);waist (mm);tail (mm);base bevel (deg);bindings';
const sheet = [
  HEAD,
  'Ada;Larch;SL;165;1454;113,8;65,7;100,7;0,5;short plate',
  'Ada;Birch;SL;165;1454;thick;65,7;100,7;0,5;',
  'Bruno;Rowan;GS;188;1650;95;64;79;45;',
  'Bruno;Alder;GS;188;1650;95;64',
].join('\n');

let next = 0;
const newId = () => `id-${++next}`;
const read = lookOver('squad.csv', READ.sheet(sheet), []);

describe('a sheet looked over', () => {
  it('accounts for every line: a pair, a reason, or both', () => {
    expect(read.pairs.map(each => each.row)).toEqual([2, 4]);
    expect(read.refused).toEqual([3, 5]);
    const reported = new Set(read.lines.map(line => line.row));
    for (const row of [3, 4, 5]) expect(reported).toContain(row);
    expect(read.lines.filter(line => line.kind === 'field left out').map(line => line.row)).toEqual([4]);
  });

  it('keeps owners and cells it has no use for, through a rack file and back', () => {
    const [larch] = entriesOf(read.pairs, newId, false);
    expect(checkPair(larch!.pair)).toEqual([]);
    const back = readRack(writeRack(rackOf('Club', [larch!.pair])));
    const pair = back.ok && back.rack.pairs[0]!.ok ? back.rack.pairs[0].pair : null;
    expect(pair && [ownerOf(pair), extraOf(pair), pair.id]).toEqual([
      'Ada',
      [['bindings', 'short plate']],
      larch!.pair.id,
    ]);
  });

  it('gives lines at fault back as they stood, with why, to be mended and read again', () => {
    const text = faultSheet(read);
    const lines = text.trim().split('\n');
    expect(lines[0]).toBe(`${HEAD};what was wrong`);
    expect(lines).toHaveLength(4);
    expect(lines[1]).toContain('thick');
    const again = readSheet(
      text.replace('thick', '113,8').replace('64;;;;', '64;79;0,5;;').replace(';45;', ';0,7;'),
    );
    expect(again.pairs.map(each => each.pair.name)).toEqual(['Birch', 'Rowan', 'Alder']);
  });

  it('lines its reasons up under their heading, once, also behind cells too many', () => {
    const long = lookOver('squad.csv', READ.sheet(`${sheet}\nBruno;Elm;GS;188;1650;95;64;;;;x;y`), []);
    const again = lookOver('again.csv', READ.sheet(faultSheet(long)), []);
    const [head, ...lines] = readCsvRows(faultSheet(again)).rows.map(row => row.fields);
    expect(head!.filter(cell => cell === 'what was wrong')).toHaveLength(1);
    for (const line of lines) expect(line[head!.length - 1]).toMatch(/accepted/);
    expect(lines.some(line => line.includes('x') && line.includes('y'))).toBe(true);
  });

  it('knows pairs that the rack has to the last measurement', () => {
    const rack = entriesOf(read.pairs, newId, false);
    expect(lookOver('squad.csv', READ.sheet(sheet), rack).pairs.map(each => each.known)).toEqual([
      true,
      true,
    ]);
    const moved = sheet.replace('113,8', '113,9');
    expect(lookOver('squad.csv', READ.sheet(moved), rack).pairs.map(each => each.known)).toEqual([
      false,
      true,
    ]);
  });

  it('says what is wrong with a file that is no sheet', () => {
    const none = lookOver('letter.txt', READ.sheet('Dear club,\nhere are the skis.'), []);
    expect(none.pairs).toEqual([]);
    expect(none.lines[0]!.message).toContain('headings');
    expect(faultSheet(none)).toContain('here are the skis.');
  });

  it('takes an owner away with the field', () => {
    const { pair } = read.pairs[0]!;
    expect('owner' in withOwner(pair, ' ')).toBe(false);
    expect(ownerOf(withOwner(pair, ' Linnet '))).toBe('Linnet');
  });
});
