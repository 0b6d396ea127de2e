import { readFile } from 'node:fs/promises';
import { whyNotRead } from '../disk/index.ts';
import { decodeText } from '../host/index.ts';
import { InputFault } from './fault.ts';
import { t } from './words.ts';

/** @throws InputFault when the file cannot be read or is no text */
export async function readInputFile(file: string, note: (text: string) => void): Promise<string> {
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    throw new InputFault(t('calc.notRead', { file, why: whyNotRead(error) }));
  }
  return textOf(file, bytes, note);
}

/**
 * Bytes as the page reads them, whether of a file or of standard input; what had to be taken for granted goes
 * to `note`.
 *
 * @throws InputFault when they are no text
 */
export function textOf(file: string, bytes: Uint8Array, note: (text: string) => void): string {
  const decoded = decodeText(bytes, file);
  if (!decoded.ok) throw new InputFault(`${file}: ${decoded.problem}`);
  if (decoded.note !== undefined) note(`${file}: ${decoded.note}`);
  return decoded.text;
}
