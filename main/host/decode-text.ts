import { decodeText as decodeBytes } from '../../core/table/index.ts';
import type { FileKind } from './messages.ts';
import { say } from './say.ts';

/** A file's bytes as text, or in words for behind its name why they are none. */
export type DecodedText =
  | {
      readonly ok: true;
      readonly text: string;
      /** What had to be taken for granted, in a sentence; absent for plain UTF-8. */
      readonly note?: string;
    }
  | { readonly ok: false; readonly problem: string };

const NOTES = {
  'UTF-16': 'disk.readAsUtf16',
  'Windows-1252': 'disk.readAsWestern',
} as const;

const PROBLEMS = {
  'not Unicode': 'disk.notUnicode',
  workbook: 'disk.workbook',
  'not text': 'disk.noText',
} as const;

/** The same for the page, the window and the command line; `name` says what JSON may not be written in. */
export function decodeText(bytes: Uint8Array, name?: string): DecodedText {
  const plain = plainUtf8(bytes);
  if (plain !== null) return { ok: true, text: plain };
  const read = decodeBytes(bytes, name);
  if (!read.ok) return { ok: false, problem: say({ key: PROBLEMS[read.found] }) };
  const { text, encoding } = read;
  return { ok: true, text, ...(encoding === 'UTF-8' ? {} : { note: say({ key: NOTES[encoding] }) }) };
}

/** Plain UTF-8 as the system reads it, in a tenth of the time; null where there is more to tell. */
function plainUtf8(bytes: Uint8Array): string | null {
  if (bytes.includes(0)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** What a dropped file most likely holds, by its name. */
export const kindOf = (name: string): FileKind => (/\.(csv|tsv|txt)$/i.test(name) ? 'table' : 'skis');
