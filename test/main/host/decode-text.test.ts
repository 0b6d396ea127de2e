import { expect, test } from 'vitest';
import { decodeText, kindOf } from '../../../main/host/index.ts';

const latin = Uint8Array.from('Zoë;Lärche', letter => letter.charCodeAt(0));

test('what had to be taken for granted is told in a sentence', () => {
  expect(decodeText(new TextEncoder().encode('Zoë'), 'a.csv')).toEqual({ ok: true, text: 'Zoë' });
  expect(decodeText(Uint8Array.of(0xff, 0xfe, 0x5a, 0, 0x6f, 0, 0xeb, 0), 'a.csv')).toEqual({
    ok: true,
    text: 'Zoë',
    note: 'Read as UTF-16 text.',
  });
  expect(decodeText(latin, 'a.csv')).toEqual({
    ok: true,
    text: 'Zoë;Lärche',
    note: 'The file is not UTF-8; read as Western European text. Look at names with accents.',
  });
});

test('what is no text is refused in words', () => {
  const problem = (bytes: Uint8Array, name: string) => {
    const read = decodeText(bytes, name);
    return read.ok ? null : read.problem;
  };
  expect(problem(latin, 'ash.pair.json')).toBe('is not UTF-8 text');
  expect(problem(Uint8Array.of(0x50, 0x4b, 3, 4, 0xff), 'squad.xlsx')).toMatch(/^is a workbook.*CSV/);
  expect(problem(Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 1, 0x10), 'photo.jpg')).toBe('is not text');
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
