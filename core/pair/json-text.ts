/**
 * JSON text to values and back without the two silent losses of `JSON.parse`: a number that no double can hold, and a
 * key that stands twice in one object.
 */

/** Stands before the digits of a number that is kept as text; hardly a file has this letter of nobody's alphabet. */
const MARK = '\uE000';
/** A text that is marked so, and no key; with the digits as JSON writes a number. */
const MARKED = /"\uE000(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)"(?!:)/g;

export interface ParsedJson {
  readonly value: unknown;
  /** Keys that stand twice in one object, each once, as they are read; the last of them counts. */
  readonly repeated: readonly string[];
}

/** @throws SyntaxError as `JSON.parse` does */
export function parseJson(text: string): ParsedJson {
  const value: unknown = JSON.parse(text);
  const repeated = new Set<string>();
  const unkept: { at: number; end: number }[] = [];
  /** Keys of every object that is open; null for a list. */
  const open: (Set<string> | null)[] = [];
  const next = /["{}[\]]|-?\d[\d.eE+-]*/g;
  for (let found = next.exec(text); found !== null; found = next.exec(text)) {
    const { index } = found;
    const [token] = found;
    if (token === '{') open.push(new Set());
    else if (token === '[') open.push(null);
    else if (token === '}' || token === ']') open.pop();
    else if (token !== '"') {
      if (!holds(token)) unkept.push({ at: index, end: index + token.length });
    } else {
      next.lastIndex = stringEnd(text, index);
      if (!isKey(text, next.lastIndex)) continue;
      const keys = open.at(-1);
      const token = text.slice(index, next.lastIndex);
      const key = token.includes('\\') ? (JSON.parse(token) as string) : token.slice(1, -1);
      if (keys?.has(key)) repeated.add(key);
      else keys?.add(key);
    }
  }
  const quoted = unkept.length > 0 && !/\uE000|\\ue000/i.test(text);
  return { value: quoted ? JSON.parse(withQuoted(text, unkept)) : value, repeated: [...repeated] };
}

/** A value as a file's text; numbers that were kept as text are numbers again, digit for digit. */
export const jsonText = (value: unknown): string =>
  // What a double holds was never kept as text: there the mark is a letter of the file's own.
  `${JSON.stringify(value, null, 2).replaceAll(MARKED, (text, digits: string) => (holds(digits) ? text : digits))}\n`;

/** The digits of a number that is kept as text; null for anything else. */
export const keptNumber = (value: unknown): string | null =>
  typeof value === 'string' && value.startsWith(MARK) ? value.slice(1) : null;

/** Behind the string that begins here. A pattern would count the escapes of a long one on the stack. */
function stringEnd(text: string, from: number): number {
  for (let at = text.indexOf('"', from + 1); ; at = text.indexOf('"', at + 1)) {
    let escapes = 0;
    while (text[at - 1 - escapes] === '\\') escapes++;
    if (escapes % 2 === 0) return at + 1;
  }
}

function isKey(text: string, after: number): boolean {
  let at = after;
  while (text.charCodeAt(at) <= 0x20) at++;
  return text[at] === ':';
}

/** Whether a double holds this number: not past its range, not a whole number between two of its own. */
function holds(digits: string): boolean {
  if (digits.length < 16 && !/e[+-]?\d{3}/i.test(digits)) return true;
  const number = Number(digits);
  if (!Number.isFinite(number)) return false;
  if (number === 0) return !/[1-9]/.test(digits.replace(/e.*/i, ''));
  // Written again, it stands there as it did, or it is at least the same number.
  return String(number) === digits || !/^-?\d+$/.test(digits) || BigInt(digits) === BigInt(number);
}

function withQuoted(text: string, numbers: readonly { at: number; end: number }[]): string {
  const parts: string[] = [];
  let from = 0;
  for (const { at, end } of numbers) {
    parts.push(text.slice(from, at), `"${MARK}${text.slice(at, end)}"`);
    from = end;
  }
  return parts.join('') + text.slice(from);
}
