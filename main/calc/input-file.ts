import { readFile } from 'node:fs/promises';
import { whyNotRead } from '../disk/index.ts';
import { InputFault } from './fault.ts';

/** @throws InputFault when the file cannot be read or is no text */
export async function readInputFile(file: string): Promise<string> {
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    throw new InputFault(`${file}: could not be read: ${whyNotRead(error)}`);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputFault(`${file}: is not UTF-8 text`);
  }
}
