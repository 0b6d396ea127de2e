import { readFile } from 'node:fs/promises';
import { InputFault } from './fault.ts';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  ENOTDIR: 'no such file',
  EISDIR: 'is a folder; give a file',
  EACCES: 'may not be read by this user',
  EPERM: 'may not be read by this user',
};

/** @throws InputFault when the file cannot be read or is no text */
export async function readInputFile(file: string): Promise<string> {
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    const { code = '' } = error as NodeJS.ErrnoException;
    throw new InputFault(`${file}: ${REASONS[code] ?? `could not be read (${code})`}`);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputFault(`${file}: is not UTF-8 text`);
  }
}
