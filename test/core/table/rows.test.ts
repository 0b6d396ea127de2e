import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asCsvFile, readCsvNumber, readCsvRows, writeCsvRows } from '../../../core/table/index.ts';

const fieldsOf = (text: string) => readCsvRows(text).rows.map(row => row.fields);

describe('readCsvRows', () => {
  it('reads each separator, any line ending, a byte-order mark and a told separator', () => {
    const expected = [
      ['a', 'b'],
      ['1', '2'],
    ];
    expect(fieldsOf('a,b\n1,2\n')).toEqual(expected);
    expect(fieldsOf('\uFEFFa;b\r\n1;2')).toEqual(expected);
    expect(fieldsOf('a\tb\r1\t2\r')).toEqual(expected);
    expect(fieldsOf('a|b\n\n1|2\n\n')).toEqual(expected);
    expect(fieldsOf('sep=;\na;b\n1;2')).toEqual(expected);
    expect(fieldsOf('a;b\n1,5;2,5')).toEqual([
      ['a', 'b'],
      ['1,5', '2,5'],
    ]);
  });

  it('reads quoted fields with separators, quotes and line breaks, and counts lines past them', () => {
    const { rows } = readCsvRows('a,b\n"x, ""y""\nz",2\n3,4\n');
    expect(rows[1]).toMatchObject({ line: 2, fields: ['x, "y"\nz', '2'] });
    expect(rows[2]).toMatchObject({ line: 4, fields: ['3', '4'] });
  });

  it('reads a quote that is never closed as an ordinary character and says so', () => {
    const read = readCsvRows('a,b\n"x,2\n3,4\n');
    expect(read.rows.map(row => row.fields)).toEqual([
      ['a', 'b'],
      ['"x', '2'],
      ['3', '4'],
    ]);
    expect(read.unclosedQuotes).toEqual([2]);
  });

  it('keeps empty fields, also at the end of a row', () => {
    expect(fieldsOf('a,b,c\n,,3\n1,,')).toEqual([
      ['a', 'b', 'c'],
      ['', '', '3'],
      ['1', '', ''],
    ]);
  });

  it('reads back whatever was written', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\n', ' ', '1', '|') });
    const row = fc.array(field, { minLength: 2, maxLength: 4 }).filter(r => r.some(f => f.trim() !== ''));
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 6 }),
        fc.constantFrom(',', ';', '|'),
        (rows, sep) => {
          const read = readCsvRows(writeCsvRows(rows, sep), sep);
          expect(read.rows.map(r => r.fields)).toEqual(rows);
          expect(read.unclosedQuotes).toEqual([]);
        },
      ),
    );
  });
});

describe('readCsvNumber', () => {
  it.each([
    ['12.5', 12.5, null],
    ['12,5', 12.5, null],
    ['1.234,5', 1234.5, null],
    ['1,234.5', 1234.5, null],
    ['1 650', 1650, null],
    ["1'650", 1650, null],
    ['1,234,567', 1234567, null],
    ['\u22123,5', -3.5, null],
    ['165 cm', 165, 'cm'],
    ['87°', 87, '°'],
    ['0,5 deg.', 0.5, 'deg'],
    ['.5', 0.5, null],
  ])('%s', (text, value, unit) => {
    expect(readCsvNumber(text)).toEqual({ value, unit });
  });

  it.each(['', 'about 66', '1.2.3', '12,34.56,7', '6e400', '12 mm 3', '-'])('refuses %s', text => {
    expect(readCsvNumber(text)).toBeNull();
  });
});

describe('what a spreadsheet would work out', () => {
  const formulas = [
    '=1+1',
    '+A1',
    '-A1*2',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    "'=1",
    "''@x",
    '-2+3',
    '=HYPERLINK("x")',
  ];

  it('is written as text and comes back as it was', () => {
    for (const field of formulas) {
      const text = writeCsvRows([[field, 'b']]);
      expect(text.replace(/^"/, '').startsWith("'")).toBe(true);
      expect(fieldsOf(text)).toEqual([[field, 'b']]);
    }
  });

  it('numbers with their sign stay numbers', () => {
    const numbers = ['-3.5', '+2', '-1,25', '-1e-7', '-', "-1'250.5", '0'];
    expect(writeCsvRows([numbers], ';')).not.toMatch(/(^|;|")'/);
  });

  it('any field comes back as it was, whatever the separator', () => {
    const field = fc.oneof(
      fc.string(),
      fc.constantFrom(...formulas),
      fc.stringMatching(/^['=+@\t;|,"-]{1,6}$/),
    );
    const row = fc.array(field, { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1 }),
        fc.constantFrom(',', ';', '\t', '|'),
        (rows, separator) => {
          const kept = rows.filter(each => each.some(cell => cell.trim() !== ''));
          expect(fieldsOf(asCsvFile(writeCsvRows(rows, separator as ',')))).toEqual(kept);
        },
      ),
    );
  });
});
