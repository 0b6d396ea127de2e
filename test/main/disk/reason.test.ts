import { expect, test } from 'vitest';
import { whyNotRead, whyNotWritten } from '../../../main/disk/reason.ts';

const refused = (code: string) => Object.assign(new Error(`${code}: refused`), { code });

test('a refusal is told for what was asked of the disk', () => {
  expect(whyNotRead(refused('EACCES'))).toBe('this user may not read it');
  expect(whyNotWritten(refused('EACCES'))).toBe('writing there is not permitted');
  expect(whyNotRead(refused('ENOENT'))).toBe('no such file');
  expect(whyNotWritten(refused('ENOENT'))).toBe('the folder is no longer there');
  for (const why of [whyNotRead, whyNotWritten]) {
    expect(why(refused('EIO'))).toBe('the disk reports a fault');
    expect(why(refused('EWHAT'))).toBe('EWHAT: refused');
    expect(why(new Error('the file is marked read-only'))).toBe('the file is marked read-only');
  }
});
