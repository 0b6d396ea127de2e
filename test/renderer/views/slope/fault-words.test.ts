import { expect, it } from 'vitest';
import { readProfile } from '../../../../core/run/index.ts';
import { faultWords } from '../../../../renderer/views/slope/fault-words.ts';

function words(text: string): string {
  try {
    readProfile(text);
  } catch (error) {
    return faultWords('slope.csv', error as Error);
  }
  return 'read';
}

it('says file, line, field, value and what is accepted, and how many lines more', () => {
  expect(words('0,0\n10,steep\n20,-4\n')).toBe(
    'slope.csv, line 2: height (m) "steep" found; a number is accepted.',
  );
  expect(words('0,0\n10,steep\n20,flat\n15,high\n')).toBe(
    'slope.csv, line 2: height (m) "steep" found; a number is accepted. And 2 more like it.',
  );
  expect(words('0,0\n10,-2\n')).toBe('read');
});

it('tells other faults as they are', () => {
  expect(faultWords('', new Error('the file is no text'))).toBe('the file is no text');
});
