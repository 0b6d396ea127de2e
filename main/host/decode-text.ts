import type { FileKind } from './messages.ts';

/** A file's bytes as text, or `null` when they are none that this kind of file may be written in. */
export interface DecodedText {
  readonly text: string;
  /** What had to be taken for granted, in a sentence; absent for plain UTF-8. */
  readonly note?: string;
}

const LOOKED_AT = 2000;

/**
 * Reads bytes as UTF-8, or as UTF-16 where a byte-order mark or the bytes themselves say so (spreadsheets
 * write it as "Unicode text"). A table that is neither is read as Western European text, the old way of
 * spreadsheets, so that a name with an accent does not cost the whole sheet; pair and rack files are not.
 */
export function decodeText(bytes: Uint8Array, kind: FileKind): DecodedText | null {
  const wide = utf16Of(bytes);
  if (wide) return { text: new TextDecoder(wide).decode(bytes), note: 'Read as UTF-16 text.' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    if (kind === 'skis') return null;
    return {
      text: new TextDecoder('windows-1252').decode(bytes),
      note: 'The file is not UTF-8; read as Western European text. Look at names with accents.',
    };
  }
}

/** Letters of most scripts leave every other byte of UTF-16 zero; no text in UTF-8 holds a zero byte. */
function utf16Of(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const looked = bytes.subarray(0, LOOKED_AT);
  let even = 0;
  let odd = 0;
  looked.forEach((byte, at) => {
    if (byte !== 0) return;
    if (at % 2 === 0) even++;
    else odd++;
  });
  const many = looked.length / 6;
  if (odd > many && even < odd / 4) return 'utf-16le';
  return even > many && odd < even / 4 ? 'utf-16be' : null;
}

/** What a dropped file most likely holds, by its name. */
export const kindOf = (name: string): FileKind => (/\.(csv|tsv|txt)$/i.test(name) ? 'table' : 'skis');
