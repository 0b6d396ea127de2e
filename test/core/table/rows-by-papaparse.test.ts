import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { readCsvRows, type Separator, writeCsvRows } from '../../../core/table/index.ts';

/** Another reader of the same texts. Ours reads more than RFC 4180 allows; of what it allows, both read the same. */
const otherReader = (text: string, delimiter: Separator, newline: '\r\n' | '\n' | '\r'): string[][] =>
  Papa.parse<string[]>(text, { delimiter, newline, skipEmptyLines: 'greedy' }).data;

const separator = fc.constantFrom<Separator>(',', ';', '\t', '|');
const lineEnd = fc.constantFrom('\r\n' as const, '\n' as const, '\r' as const);
const text = fc.string({
  unit: fc.constantFrom('a', 'é', '1', '.', ' ', '"', ',', ';', '|', '\t', '\n', '\r\n'),
});
/** A field, and whether it is quoted though it need not be. */
const field = fc.record({ value: text, quoted: fc.boolean() });
const table = fc.array(fc.array(field, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 6 });

/** A field as RFC 4180 writes it. */
const written = ({ value, quoted }: { value: string; quoted: boolean }, of: Separator): string =>
  quoted || value.includes(of) || /["\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;

test('a text after RFC 4180 has the rows that papaparse finds in it', () => {
  fc.assert(
    fc.property(table, separator, lineEnd, fc.boolean(), (rows, of, end, endsInLine) => {
      const body = rows.map(row => row.map(each => written(each, of)).join(of)).join(end);
      const file = endsInLine ? body + end : body;
      const read = readCsvRows(file, of);
      expect(read.rows.map(({ fields }) => fields)).toEqual(otherReader(file, of, end));
      expect(read.unclosedQuotes).toEqual([]);
    }),
    { numRuns: 500 },
  );
});

test('what we write, papaparse reads back', () => {
  const row = fc
    .array(text, { minLength: 1, maxLength: 4 })
    .filter(each => each.some(one => one.trim() !== ''));
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), separator, (rows, of) => {
      const read = otherReader(writeCsvRows(rows, of), of, '\n');
      // A spreadsheet may take a leading tab or line end for the start of a formula; we put an apostrophe before it.
      expect(read.map(fields => fields.map(each => each.replace(/^'(?=[\t\r])/, '')))).toEqual(rows);
    }),
    { numRuns: 500 },
  );
});
