import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../../core/table/index.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string, { bigEndian = false, mark = true } = {}) => {
  const units = [
    ...(mark ? [0xfeff] : []),
    ...Array.from({ length: text.length }, (_, at) => text.charCodeAt(at)),
  ];
  return new Uint8Array(
    units.flatMap(unit => (bigEndian ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])),
  );
};
const sheet = 'owner\tname\tlength (cm)\r\nZoë\tLärche 165\t165\r\n';
const textOf = (bytes: Uint8Array, name?: string) => {
  const read = decodeText(bytes, name);
  return read.ok ? read.text : null;
};

describe('bytes of a table', () => {
  test.each([
    ['UTF-8', 'UTF-8', utf8(sheet)],
    ['UTF-8 with a byte-order mark', 'UTF-8', utf8(`\uFEFF${sheet}`)],
    ['UTF-16, little end first', 'UTF-16', utf16(sheet)],
    ['UTF-16, big end first', 'UTF-16', utf16(sheet, { bigEndian: true })],
    ['UTF-16 without a mark', 'UTF-16', utf16(sheet, { mark: false })],
    ['UTF-16 without a mark, big end first', 'UTF-16', utf16(sheet, { mark: false, bigEndian: true })],
    ['Windows-1252', 'Windows-1252', Uint8Array.from(sheet, letter => letter.charCodeAt(0))],
  ])('%s', (_, encoding, bytes) => {
    expect(decodeText(bytes, 'squad.csv')).toEqual({ ok: true, text: sheet, encoding });
  });

  test('is Windows-1252 in JSON never, by its name or by its first letter', () => {
    const bytes = Uint8Array.from('{"name":"Lärche"}', letter => letter.charCodeAt(0));
    expect(decodeText(bytes, 'squad.csv')).toEqual({ ok: false, found: 'not Unicode' });
    expect(decodeText(bytes)).toEqual({ ok: false, found: 'not Unicode' });
    expect(decodeText(Uint8Array.of(0x6e, 0xe9), 'ash.pair.JSON')).toEqual({
      ok: false,
      found: 'not Unicode',
    });
  });

  test('of a workbook and of a picture are refused', () => {
    expect(decodeText(Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0xff), 'squad.xlsx')).toEqual({
      ok: false,
      found: 'workbook',
    });
    expect(decodeText(Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16, 74), 'a.txt')).toEqual({
      ok: false,
      found: 'not text',
    });
  });

  test('of a file larger than one call can take come whole', () => {
    const long = 'größer '.repeat(40_000);
    expect(textOf(utf8(long))).toBe(long);
  });
});

describe('against the decoder of the platform', () => {
  const strict = (bytes: Uint8Array): string | null => {
    try {
      return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
      return null;
    }
  };
  /** Bytes near the borders of well-formed UTF-8, where a decoder errs if it does. */
  const nearUtf8 = fc
    .array(
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 4 }).map(text => [...utf8(text)]),
        fc.constantFrom(
          [0xc0, 0x80],
          [0xc1, 0xbf],
          [0xe0, 0x9f, 0xbf],
          [0xe0, 0xa0, 0x80],
          [0xed, 0x9f, 0xbf],
          [0xed, 0xa0, 0x80],
          [0xf0, 0x8f, 0xbf, 0xbf],
          [0xf4, 0x8f, 0xbf, 0xbf],
          [0xf4, 0x90, 0x80, 0x80],
          [0xf5, 0x80, 0x80, 0x80],
          [0xe2, 0x82],
          [0xef, 0xbb, 0xbf],
          [0x80],
          [0xff],
        ),
      ),
      { maxLength: 12 },
    )
    .map(parts => Uint8Array.from(parts.flat()));

  test('UTF-8 is the same text, and refused in the same places', () => {
    let refused = 0;
    fc.assert(
      fc.property(fc.oneof(nearUtf8, fc.uint8Array({ maxLength: 60 })), bytes => {
        // A byte that counts as UTF-16 is another matter.
        fc.pre(!bytes.includes(0) && !(bytes[0] >= 0xfe && bytes[1] >= 0xfe));
        const read = decodeText(bytes);
        const expected = strict(bytes);
        if (expected === null) refused++;
        expect(read.ok && read.encoding === 'UTF-8' ? read.text : null).toBe(expected);
      }),
      { numRuns: 2000 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  test.each(['utf-16le', 'utf-16be'] as const)('%s is the same text, whole pairs or not', name => {
    const mark = name === 'utf-16le' ? [0xff, 0xfe] : [0xfe, 0xff];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(0, 0x41, 0xd8, 0xdb, 0xdc, 0xdf, 0xff, 0xfe), { maxLength: 21 }),
        rest => {
          // Half a unit at the end is one lost letter here, even where half a pair stands before it.
          fc.pre(rest.length % 2 === 0);
          const bytes = Uint8Array.from([...mark, ...rest]);
          expect(textOf(bytes)).toBe(new TextDecoder(name).decode(bytes));
        },
      ),
      { numRuns: 2000 },
    );
  });
});

test('every byte of Windows-1252 is its letter, the marks of an office program among them', () => {
  // The platform's own decoder reads 0x80 to 0x9F as control codes here, so the letters stand written out.
  const marks = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ';
  for (let byte = 0x80; byte < 0x100; byte++) {
    const letter = byte < 0xa0 ? marks[byte - 0x80] : String.fromCharCode(byte);
    expect(textOf(Uint8Array.of(0x61, byte, 0x62))).toBe(`a${letter}b`);
  }
});
