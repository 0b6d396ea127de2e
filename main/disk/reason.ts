import type { PlainKey } from '../../core/language/index.ts';
import { say } from '../host/index.ts';

/** What is said of an error, by the code the system gives it. */
type Words = Readonly<Partial<Record<string, PlainKey>>>;

/** Whatever was asked of the disk. */
const EITHER: Words = {
  EBUSY: 'disk.busy',
  EIO: 'disk.fault',
  ENAMETOOLONG: 'disk.nameTooLong',
};

const READING: Words = {
  ...EITHER,
  ENOENT: 'disk.noSuchFile',
  ENOTDIR: 'disk.noSuchFile',
  EISDIR: 'disk.folderHasName',
  EACCES: 'disk.mayNotRead',
  EPERM: 'disk.mayNotRead',
};

const WRITING: Words = {
  ...EITHER,
  ENOSPC: 'disk.full',
  EDQUOT: 'disk.quota',
  EACCES: 'disk.mayNotWrite',
  EPERM: 'disk.mayNotWrite',
  EROFS: 'disk.readOnly',
  ENOENT: 'disk.folderGone',
  EISDIR: 'disk.folderHasName',
};

/** Why a file could not be read, in words; the system's own message where there are none. */
export const whyNotRead = (error: unknown): string => inWords(error, READING);

/** Why a file could not be written. */
export const whyNotWritten = (error: unknown): string => inWords(error, WRITING);

function inWords(error: unknown, words: Words): string {
  const { code, message } = error as NodeJS.ErrnoException;
  const key = code === undefined ? undefined : words[code];
  return key === undefined ? message : say({ key });
}
