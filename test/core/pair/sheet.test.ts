import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { oddEntries, readSheet } from '../../../core/pair/index.ts';
import { writeCsvRows } from '../../../core/table/index.ts';

const heading =
  'owner;name;discipline;length (cm);contact length (mm);tip;waist;tail;side edge;base bevel;mass;notes';

describe('readSheet', () => {
  it('reads a sheet with decimal commas, units in headings and synonyms', () => {
    const sheet = readSheet(
      '\uFEFFAthlete;Pair;Event;Ski length [cm];Running length (m);Shovel width mm;Underfoot;Heel;Side edge;Base;Weight (g);Comments;Locker\r\n' +
        'Ada;Larch 155;Slalom;155;1,36;117;66,5;104;87;0,5;1900;"for ice; fresh";B4\r\n',
    );
    expect(sheet.problems).toEqual([]);
    expect(sheet.pairs).toHaveLength(1);
    expect(sheet.pairs[0]).toEqual({
      row: 2,
      owner: 'Ada',
      extra: { Locker: 'B4' },
      pair: {
        format: 'turnwright.pair',
        version: 1,
        name: 'Larch 155',
        discipline: 'SL',
        lengthMm: 1550,
        contactLengthMm: 1360,
        tipWidthMm: 117,
        waistWidthMm: 66.5,
        tailWidthMm: 104,
        massKg: 1.9,
        notes: 'for ice; fresh',
        edges: { baseBevelDeg: 0.5, sideAngleDeg: 87 },
      },
    });
  });

  it('guesses a unit only where none is given, and tells', () => {
    const sheet = readSheet('name,length,contact,tip,waist,tail,side\nLarch,165,1.45,11.6,66,10.4 cm,3\n');
    expect(sheet.pairs[0].pair).toMatchObject({
      lengthMm: 1650,
      contactLengthMm: 1450,
      tipWidthMm: 116,
      waistWidthMm: 66,
      tailWidthMm: 104,
      edges: { sideAngleDeg: 87 },
    });
    expect(sheet.guesses.map(guess => guess.field)).toEqual([
      'lengthMm',
      'contactLengthMm',
      'tipWidthMm',
      'sideAngleDeg',
    ]);
  });

  it('tells row, field, what was found and what is accepted, and keeps the raw row', () => {
    const raw = 'Bruno;Rowan;GS;193;1660;wide;65;80;87;0.5;3.1;';
    const { pairs, problems } = readSheet(`${heading}\n${raw}\n`);
    expect(pairs).toEqual([]);
    expect(problems).toEqual([
      expect.objectContaining({ row: 2, field: 'tipWidthMm', found: '"wide"', raw, imported: false }),
    ]);
    expect(say(problems[0])).toContain('accepted is');
  });

  it('takes a pair over without an optional field at fault', () => {
    const { pairs, problems } = readSheet(`${heading}\nBruno;Rowan;GS;193;1660;100;65;84;87;0.5;heavy;\n`);
    expect(pairs).toHaveLength(1);
    expect(pairs[0].pair.massKg).toBeUndefined();
    expect(problems).toEqual([expect.objectContaining({ field: 'massKg', imported: true })]);
  });

  it('says per row which column is missing', () => {
    const { pairs, problems } = readSheet(
      'name,length,tip,waist,tail\nA,1650,116,66,104\nB,1650,116,66,104\n',
    );
    expect(pairs).toEqual([]);
    expect(problems.map(p => [p.row, p.field])).toEqual([
      [2, 'contactLengthMm'],
      [3, 'contactLengthMm'],
    ]);
    expect(say(problems[0])).toContain('no such column');
  });

  it('finds the separator by which the headings are known, whatever else stands in them', () => {
    const text =
      'name,length (mm),contact (mm),tip,waist,tail,"notes; remarks | wishes"\nLarch,1650,1450,116,66,104,a\n';
    const sheet = readSheet(text);
    expect(sheet.separator).toBe(',');
    expect(sheet.pairs.map(each => each.pair.name)).toEqual(['Larch']);
  });

  it('finds the headings under a title, and tells what stands above them', () => {
    const sheet = readSheet(
      `Squad rack;;;\n\nPrinted;2026-11-20\n${heading}\nAda;Larch;SL;165;1450;116;66;104;87;0.5;1.9;\n`,
    );
    expect(sheet.pairs.map(each => [each.row, each.pair.name])).toEqual([[5, 'Larch']]);
    expect(sheet.guesses.filter(each => each.field === 'row').map(each => each.row)).toEqual([1, 3]);
  });

  it('reads inches, written in the heading or behind the number', () => {
    const sheet = readSheet(
      'name;length (in);contact length (in);tip (in);waist;tail;mass (lb)\nLarch;65;57;4.57;2.6 in;"3,96""";4.2\n',
    );
    expect(sheet.problems).toEqual([]);
    expect(sheet.pairs[0]!.pair).toMatchObject({
      lengthMm: 1651,
      contactLengthMm: 1447.8,
      tipWidthMm: 116.078,
      waistWidthMm: 66.04,
      tailWidthMm: 100.584,
      massKg: 1.905087954,
    });
  });

  it('does not take numbers over whose decimal commas have pushed the cells along', () => {
    const commas = heading.replaceAll(';', ',');
    const { pairs, problems } = readSheet(`${commas}\nAda,Larch,SL,165,1450,116,66,5,104,87,0,5,1,9,\n`);
    expect(pairs).toEqual([]);
    expect(say(problems.find(each => each.field === 'row')!)).toContain('belongs in quotes');
  });

  it('takes commas of a last note for what they are', () => {
    const commas = heading.replaceAll(';', ',');
    const { pairs } = readSheet(
      `${commas}\nAda,Larch,SL,165,1450,116,66,104,87,0.5,1.9,fresh base, for ice\n`,
    );
    expect(pairs[0]!.pair.notes).toBe('fresh base, for ice');
  });

  it('keeps the cells of headings that are written twice, or not at all', () => {
    const { pairs } = readSheet(
      'name;length;contact;tip;waist;tail;tip;locker;locker;;__proto__\nLarch;1650;1450;116;66;104;117;a;b;c;d\n',
    );
    expect(pairs[0]!.pair.tipWidthMm).toBe(116);
    expect(pairs[0]!.extra).toEqual({
      'tip (2)': '117',
      locker: 'a',
      'locker (2)': 'b',
      'column 10': 'c',
      'column 11': 'd',
    });
  });

  it('sets an owner aside that is longer than a pair file holds, and says so', () => {
    const { pairs, problems } = readSheet(
      `${heading}\n${'A'.repeat(121)};Larch;SL;165;1450;116;66;104;87;0.5;1.9;\n`,
    );
    expect(pairs[0]!.owner).toBe('');
    expect(problems).toMatchObject([{ field: 'owner', imported: true }]);
  });

  it('keeps every row of a file without headings', () => {
    const { problems } = readSheet('Larch,155\nRowan,165\n');
    expect(problems.map(p => p.raw)).toEqual(['Larch,155', 'Rowan,165']);
    expect(readSheet('').problems).toHaveLength(1);
  });

  it('loses no row, whatever the cells hold', () => {
    const cell = fc.oneof(fc.constantFrom('', '66', '1650', '116 mm', '1,5', '"', 'SL', '-3'), fc.string());
    const row = fc.array(cell, { minLength: 12, maxLength: 14 }).filter(r => r.some(c => c.trim() !== ''));
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), rows => {
        const sheet = readSheet(writeCsvRows([heading.split(';'), ...rows], ';'));
        const reported = new Set([...sheet.pairs.map(p => p.row), ...sheet.problems.map(p => p.row)]);
        expect(reported.size).toBe(rows.length);
      }),
    );
  });

  it('reads ten thousand rows', () => {
    const rows = Array.from(
      { length: 10_000 },
      (_, i) => `Ada;Larch ${i};SL;165;1450;116;66;104;87;0.5;1.9;`,
    );
    const { pairs, problems } = readSheet(`${heading}\n${rows.join('\n')}`);
    expect(problems).toEqual([]);
    expect(pairs).toHaveLength(10_000);
    expect(pairs[9999]).toMatchObject({ row: 10_001, pair: { name: 'Larch 9999' } });
  });
});

describe('oddEntries', () => {
  it('flags duplicates, unusual radii, units and missing owners', () => {
    const { pairs } = readSheet(
      [
        heading,
        'Ada;Larch;SL;165;1450;116;66;104;;;;',
        'Ada;Larch;SL;165;1450;116;66;104;;;;',
        'Ada;Rowan;SL;165;1450;116;66;104;;;;',
        'Bruno;Larch;SL;165;1450;116;66;104;;;;',
        'Bruno;Alder;SL;193;1660;100;65;84;;;6.2;',
        ';Birch;GS;193;1100;100;65;84;;;;',
      ].join('\n'),
    );
    const odd = oddEntries(pairs);
    expect(odd.map(entry => [entry.row, entry.kind])).toEqual([
      [3, 'duplicate'],
      [4, 'same measurements'],
      [6, 'radius'],
      [6, 'units'],
      [7, 'radius'],
      [7, 'units'],
      [7, 'owner missing'],
    ]);
    expect(odd[0].otherRow).toBe(2);
    expect(say(odd[2].remark)).toContain('25.5\u00a0m is unusual for SL');
  });
});
