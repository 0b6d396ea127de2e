/**
 * A file's bytes as text, whatever wrote it: UTF-8; UTF-16, which spreadsheets call "Unicode text"; or
 * Windows-1252, their old Western European way. Tables come in all three, JSON in the first two only.
 */

export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

export type DecodedBytes =
  | { readonly ok: true; readonly text: string; readonly encoding: Encoding }
  /** `workbook`: a packed file, as spreadsheets save by themselves; `not Unicode`: JSON in another encoding. */
  | { readonly ok: false; readonly found: 'workbook' | 'not Unicode' | 'not text' };

/** How much of a file is looked at to tell UTF-16 without a mark, bytes. */
const LOOKED_AT = 2000;

/** Share of zero bytes among those looked at from which letters of two bytes are likely. */
const ZEROS = 1 / 6;

/**
 * Reads bytes as text. What is no UTF-8 and no UTF-16 is read as Windows-1252, so that a name with an accent
 * does not cost a whole sheet, unless it is JSON by its name or its first letter. Never throws.
 */
export function decodeText(bytes: Uint8Array, name = ''): DecodedBytes {
  const wide = utf16Of(bytes);
  if (wide) return { ok: true, text: fromUtf16(bytes, wide), encoding: 'UTF-16' };
  const text = fromUtf8(bytes);
  if (text !== null) return { ok: true, text, encoding: 'UTF-8' };
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3) return { ok: false, found: 'workbook' };
  if (bytes.some(isControl)) return { ok: false, found: 'not text' };
  const western = fromUnits(
    Uint16Array.from(bytes, byte => ((byte & 0xe0) === 0x80 ? C1[byte - 0x80] : byte)),
  );
  if (/\.json$/i.test(name) || /^\s*[{[]/.test(western)) return { ok: false, found: 'not Unicode' };
  return { ok: true, text: western, encoding: 'Windows-1252' };
}

/** Letters of most scripts leave every other byte of UTF-16 zero; no text in UTF-8 holds a zero byte. */
function utf16Of(bytes: Uint8Array): 'little' | 'big' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'little';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'big';
  const looked = bytes.subarray(0, LOOKED_AT);
  let even = 0;
  let odd = 0;
  looked.forEach((byte, at) => {
    if (byte !== 0) return;
    if (at % 2 === 0) even++;
    else odd++;
  });
  const many = looked.length * ZEROS;
  if (odd > many && even < odd / 4) return 'little';
  return even > many && odd < even / 4 ? 'big' : null;
}

/** A unit without its partner, or half a unit at the end, becomes the mark for a letter that is lost. */
function fromUtf16(bytes: Uint8Array, end: 'little' | 'big'): string {
  const units = new Uint16Array(Math.ceil(bytes.length / 2));
  const high = end === 'big' ? 0 : 1;
  for (let i = 0; i < units.length; i++) {
    units[i] = 2 * i + 1 < bytes.length ? (bytes[2 * i + high] << 8) | bytes[2 * i + 1 - high] : LOST;
  }
  for (let i = 0; i < units.length; i++) {
    if (isLead(units[i]) && i + 1 < units.length && isTrail(units[i + 1])) i++;
    else if (isLead(units[i]) || isTrail(units[i])) units[i] = LOST;
  }
  return fromUnits(units);
}

const LOST = 0xfffd;
const isLead = (unit: number): boolean => (unit & 0xfc00) === 0xd800;
const isTrail = (unit: number): boolean => (unit & 0xfc00) === 0xdc00;

/** Null where the bytes are no well-formed UTF-8: cut short, longer than needed, half a pair, too large. */
function fromUtf8(bytes: Uint8Array): string | null {
  // No byte makes more than one unit.
  const units = new Uint16Array(bytes.length);
  let count = 0;
  for (let at = 0; at < bytes.length; ) {
    const first = bytes[at++];
    if (first < 0x80) {
      units[count++] = first;
      continue;
    }
    const more =
      first >= 0xc2 && first < 0xe0 ? 1 : first >= 0xe0 && first < 0xf0 ? 2 : first >= 0xf0 ? 3 : 0;
    if (more === 0 || first > 0xf4 || at + more > bytes.length) return null;
    let code = first & (0x3f >> more);
    for (let i = 0; i < more; i++) {
      const next = bytes[at++];
      if ((next & 0xc0) !== 0x80) return null;
      code = (code << 6) | (next & 0x3f);
    }
    if (code < LEAST[more] || code > 0x10ffff || (code & 0xfff800) === 0xd800) return null;
    if (code < 0x10000) units[count++] = code;
    else {
      units[count++] = 0xd800 | ((code - 0x10000) >> 10);
      units[count++] = 0xdc00 | ((code - 0x10000) & 0x3ff);
    }
  }
  return fromUnits(units.subarray(0, count));
}

/** Least code that needs one, two or three bytes more. */
const LEAST = [0, 0x80, 0x800, 0x10000];

/** Text of UTF-16 units, a byte-order mark in front left out. */
function fromUnits(units: Uint16Array): string {
  const parts: string[] = [];
  for (let at = units[0] === 0xfeff ? 1 : 0; at < units.length; at += CHUNK) {
    parts.push(String.fromCharCode(...units.subarray(at, at + CHUNK)));
  }
  return parts.join('');
}

/** Units handed over in one call: more than a few ten thousand arguments are not safe everywhere. */
const CHUNK = 8192;

/** Control codes no text file holds; an old one may end with 0x1A. */
const isControl = (byte: number): boolean => byte < 0x20 && !(byte >= 9 && byte <= 13) && byte !== 0x1a;

/** Windows-1252 from 0x80 to 0x9F (WHATWG Encoding, index windows-1252; from memory, agrees with another library's table); elsewhere a byte is its code. */
const C1 = Uint16Array.of(
  0x20ac,
  0x81,
  0x201a,
  0x0192,
  0x201e,
  0x2026,
  0x2020,
  0x2021,
  0x02c6,
  0x2030,
  0x0160,
  0x2039,
  0x0152,
  0x8d,
  0x017d,
  0x8f,
  0x90,
  0x2018,
  0x2019,
  0x201c,
  0x201d,
  0x2022,
  0x2013,
  0x2014,
  0x02dc,
  0x2122,
  0x0161,
  0x203a,
  0x0153,
  0x9d,
  0x017e,
  0x0178,
);
