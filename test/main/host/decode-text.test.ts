import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeText, kindOf } from '../../../main/host/decode-text.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string, { bigEndian = false, mark = true } = {}) => {
  const units = [...(mark ? [0xfeff] : []), ...Array.from(text, (_, at) => text.charCodeAt(at))];
  return new Uint8Array(
    units.flatMap(unit => (bigEndian ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])),
  );
};
const sheet = 'owner\tname\tlength (cm)\r\nZoë\tLärche 165\t165\r\n';

describe('bytes of a table', () => {
  test.each([
    ['UTF-8', utf8(sheet)],
    ['UTF-8 with a byte-order mark', utf8(`\uFEFF${sheet}`)],
    ['UTF-16, little end first', utf16(sheet)],
    ['UTF-16, big end first', utf16(sheet, { bigEndian: true })],
    ['UTF-16 without a mark', utf16(sheet, { mark: false })],
    ['UTF-16 without a mark, big end first', utf16(sheet, { mark: false, bigEndian: true })],
  ])('%s', (_, bytes) => {
    expect(decodeText(bytes, 'table')?.text).toBe(sheet);
  });

  test('Western European text is read and told', () => {
    const bytes = Uint8Array.from(sheet, letter => letter.charCodeAt(0));
    expect(decodeText(bytes, 'table')).toEqual({ text: sheet, note: expect.stringContaining('not UTF-8') });
    expect(decodeText(bytes, 'skis')).toBeNull();
  });

  test('any UTF-8 without zero bytes comes back as it was', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), text => {
        fc.pre(!text.includes('\0') && !text.startsWith('\uFEFF'));
        expect(decodeText(utf8(text), 'skis')).toEqual({ text });
      }),
    );
  });

  test('any bytes give some text for a table, never an error', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), bytes => {
        expect(typeof decodeText(bytes, 'table')?.text).toBe('string');
      }),
    );
  });
});

test('a dropped file is a table by its name', () => {
  expect(['squad.CSV', 'rows.tsv', 'rows.txt', 'a.rack.json', 'b'].map(kindOf)).toEqual([
    'table',
    'table',
    'table',
    'skis',
    'skis',
  ]);
});
