import { decodeText as decodeBytes } from '../../core/table/index.ts';
import type { FileKind } from './messages.ts';

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
  'UTF-16': 'Read as UTF-16 text.',
  'Windows-1252': 'The file is not UTF-8; read as Western European text. Look at names with accents.',
} as const;

const PROBLEMS = {
  'not Unicode': 'is not UTF-8 text',
  workbook: 'is a workbook, not text; save the sheet as CSV and open that',
  'not text': 'is not text',
} as const;

/** The same for the page, the window and the command line; `name` says what JSON may not be written in. */
export function decodeText(bytes: Uint8Array, name?: string): DecodedText {
  const read = decodeBytes(bytes, name);
  if (!read.ok) return { ok: false, problem: PROBLEMS[read.found] };
  const { text, encoding } = read;
  return { ok: true, text, ...(encoding === 'UTF-8' ? {} : { note: NOTES[encoding] }) };
}

/** What a dropped file most likely holds, by its name. */
export const kindOf = (name: string): FileKind => (/\.(csv|tsv|txt)$/i.test(name) ? 'table' : 'skis');
