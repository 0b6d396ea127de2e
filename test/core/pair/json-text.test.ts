import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { rackOf, readPair, readRack, writePair, writeRack } from '../../../core/pair/index.ts';
import { jsonText, parseJson } from '../../../core/pair/json-text.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';

const pair = demoPairs[0]!;
const withField = (text: string) => writePair(pair).replace('{', `{ ${text},`);

describe('JSON text', () => {
  test('any value comes back as JSON.parse gives it', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), value => {
        const text = JSON.stringify(value);
        expect(parseJson(text)).toEqual({ value: JSON.parse(text), repeated: [] });
      }),
    );
  });

  test.each(['12345678901234567891', '-9007199254740993', '1e400', '-1E+400', '1e-400'])(
    'the number %s, which no double holds, is written as it was read',
    digits => {
      const written = jsonText(parseJson(`{"a":{"list":[${digits},"${digits}"]},"b":${digits}}`).value);
      expect(written.replaceAll(/\s/g, '')).toBe(`{"a":{"list":[${digits},"${digits}"]},"b":${digits}}`);
    },
  );

  test('texts and keys that only look like such a number stay what they are', () => {
    for (const value of [{ '\uE0001': 2 }, { a: '\uE0001' }, ['\uE000--5', '\uE0001.2.3', '\uE000']]) {
      expect(JSON.parse(jsonText(parseJson(JSON.stringify(value)).value))).toEqual(value);
    }
  });

  test('every other number is a number', () => {
    for (const digits of ['0.1', '1e3', '-0', '1e21', '9007199254740992', '117.00000000000000001']) {
      expect(parseJson(digits).value).toBe(JSON.parse(digits));
    }
  });

  test('a key that stands twice is named, one of another object is none', () => {
    expect(parseJson('{"a":1,"b":{"a":2},"c":[{"a":3},{"a":4}]}').repeated).toEqual([]);
    expect(parseJson('{"a":1,"\\u0061":2,"b":{"x":"{\\"a\\":1}","x":1}}').repeated).toEqual(['a', 'x']);
  });
});

describe('a pair file', () => {
  test('keeps numbers of unknown fields as they were written', () => {
    const read = readPair(withField('"serial": 12345678901234567891, "far": 1e400'));
    expect(read.ok && writePair(read.pair)).toMatch(/"serial": 12345678901234567891,[\s\S]*"far": 1e400/);
    const rack = readRack(writeRack(rackOf('', [read.ok ? read.pair : pair])));
    expect(rack.ok && writeRack(rack.rack)).toContain('"serial": 12345678901234567891');
  });

  test('tells of a name that stands twice', () => {
    const read = readPair(withField('"waistWidthMm": 61'));
    expect(read.ok && read.notes.map(note => say(note)).join()).toContain('"waistWidthMm"');
  });

  test('a number that is none in a field of its own is refused as it was written', () => {
    const read = readPair(writePair(pair).replace(/"massKg": [\d.]+/, '"massKg": 1e400'));
    expect(read.ok ? [] : read.problems).toMatchObject([{ field: 'massKg', found: '1e400' }]);
  });
});
