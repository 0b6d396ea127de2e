import { expect, test } from 'vitest';
import { languages, say as sayTo } from '../../../core/language/index.ts';
import { LANGUAGE, say } from '../../../main/host/index.ts';

test('the language of all hosts is one of those there are, and says what it says anywhere', () => {
  expect(Object.values(languages)).toContain(LANGUAGE);
  const sentence = { key: 'disk.folder', values: { name: 'Racks' } } as const;
  expect(say(sentence)).toBe(sayTo(sentence, { language: LANGUAGE }));
  expect(say({ field: 'massKg', found: 40, accepted: { from: 0.2, to: 6, unit: 'kg' } })).toBe(
    'massKg: 40 is not accepted; accepted is a number from 0.2 to 6 kg',
  );
});
