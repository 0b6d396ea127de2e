/** Whatever was asked of the disk. */
const EITHER: Readonly<Record<string, string>> = {
  EBUSY: 'another program is using the file',
  EIO: 'the disk reports a fault',
  ENAMETOOLONG: 'the name is too long',
};

const READING: Readonly<Record<string, string>> = {
  ...EITHER,
  ENOENT: 'no such file',
  ENOTDIR: 'no such file',
  EISDIR: 'a folder has that name',
  EACCES: 'this user may not read it',
  EPERM: 'this user may not read it',
};

const WRITING: Readonly<Record<string, string>> = {
  ...EITHER,
  ENOSPC: 'the disk is full',
  EDQUOT: 'the space allowed on this disk is used up',
  EACCES: 'writing there is not permitted',
  EPERM: 'writing there is not permitted',
  EROFS: 'the disk is read-only',
  ENOENT: 'the folder is no longer there',
  EISDIR: 'a folder has that name',
};

/** Why a file could not be read, in words; the system's own message where there are none. */
export const whyNotRead = (error: unknown): string => inWords(error, READING);

/** Why a file could not be written. */
export const whyNotWritten = (error: unknown): string => inWords(error, WRITING);

function inWords(error: unknown, words: Readonly<Record<string, string>>): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code && words[code]) ?? message;
}
