const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the space allowed on this disk is used up',
  EACCES: 'writing there is not permitted',
  EPERM: 'writing there is not permitted',
  EROFS: 'the disk is read-only',
  ENOENT: 'the folder is no longer there',
  EISDIR: 'a folder has that name',
  EBUSY: 'another program is using the file',
  EIO: 'the disk reports a fault',
  ENAMETOOLONG: 'the name is too long',
};

/** Why the disk refused, in words; the system's own message where there are none. */
export function plainReason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code && REASONS[code]) ?? message;
}
