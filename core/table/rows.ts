/**
 * Separated text into rows and back, after RFC 4180, as forgiving as people's files need: comma, semicolon,
 * tab or bar, a byte-order mark, any line ending, quoted fields with line breaks, a `sep=;` first line.
 * No field is ever dropped; a quote that is never closed is read as an ordinary character and told.
 */

export type Separator = ',' | ';' | '\t' | '|';

export interface CsvRow {
  /** Line of the file on which the row starts, counted from 1. */
  readonly line: number;
  readonly fields: readonly string[];
  /** The row as it stood in the file. */
  readonly raw: string;
}

export interface CsvRows {
  readonly separator: Separator;
  /** Rows that hold anything at all; blank lines are left out. */
  readonly rows: readonly CsvRow[];
  /** Lines with a quote that is opened and never closed. */
  readonly unclosedQuotes: readonly number[];
}

/** Splits `text` into rows; the separator is read from the first line unless given. */
export function readCsvRows(text: string, separator?: Separator): CsvRows {
  let body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  let line = 1;
  const reported = /^sep=([,;|\t])\r?\n/i.exec(body);
  if (reported) {
    body = body.slice(reported[0].length);
    line = 2;
  }
  const used = separator ?? (reported?.[1] as Separator | undefined) ?? guessSeparator(body);
  const rows: CsvRow[] = [];
  const unclosedQuotes: number[] = [];
  // A quote without a partner is found by looking ahead once, not by rereading the rest for each.
  let lastQuote = body.lastIndexOf('"');

  let fields: string[] = [];
  let rowStart = 0;
  let rowLine = line;
  let at = 0;
  const closeRow = (end: number): void => {
    if (fields.some(field => field.trim() !== '')) {
      rows.push({ line: rowLine, fields, raw: body.slice(rowStart, end) });
    }
    fields = [];
  };

  while (at < body.length) {
    let opening = at;
    while (body[opening] === ' ') opening++;
    let field = '';
    let quoted = false;
    if (body[opening] === '"') {
      const closing = opening < lastQuote ? closingQuote(body, opening, used) : -1;
      if (closing < 0) {
        unclosedQuotes.push(line);
        if (opening >= lastQuote) lastQuote = -1;
      } else {
        field = body.slice(opening + 1, closing).replaceAll('""', '"');
        line += countBreaks(body, opening, closing);
        at = closing + 1;
        quoted = true;
      }
    }
    let end = at;
    while (end < body.length && body[end] !== used && body[end] !== '\n' && body[end] !== '\r') end++;
    fields.push(literal(quoted ? field + body.slice(at, end).trim() : body.slice(at, end)));
    at = end;
    if (at >= body.length) break;
    if (body[at] === used) {
      at++;
      if (at === body.length) fields.push('');
      continue;
    }
    closeRow(at);
    at += body[at] === '\r' && body[at + 1] === '\n' ? 2 : 1;
    line++;
    rowLine = line;
    rowStart = at;
  }
  if (fields.length > 0) closeRow(body.length);
  return { separator: used, rows, unclosedQuotes };
}

/**
 * Rows to text, quoting only where a field needs it; lines end in `\n`. A field that a spreadsheet would work out
 * as a formula has an apostrophe put before it, which `readCsvRows` takes away again.
 */
export function writeCsvRows(rows: readonly (readonly string[])[], separator: Separator = ','): string {
  return rows.map(row => `${row.map(field => quoted(inert(field))).join(separator)}\n`).join('');
}

/** The mark that tells a spreadsheet that a text is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** Separated text as a file of its own: what a spreadsheet opens with every accent right. */
export const asCsvFile = (text: string): string => BYTE_ORDER_MARK + text;

function quoted(field: string): string {
  // Any separator is quoted, or a reader might take it for the one that this text uses.
  const needsQuote = /[,;|\t"\r\n]/.test(field) || field !== field.trim();
  return needsQuote ? `"${field.replaceAll('"', '""')}"` : field;
}

/** What spreadsheets take for a formula, whatever stands before it of our own apostrophes. */
const FORMULA = /^'*[=+\-@\t\r]/;
/** A number with its sign, or a dash for nothing, is none. */
const NO_FORMULA = /^[+-]?(\d[\d.,' \u00A0\u202F]*)?([eE][+-]?\d+)?$/;

const inert = (field: string): string =>
  FORMULA.test(field) && !NO_FORMULA.test(field) ? `'${field}` : field;

const literal = (field: string): string =>
  field.startsWith("'") && FORMULA.test(field) ? field.slice(1) : field;

/**
 * The closing quote of the field opened at `opening`: the first lone quote that a separator or a line end
 * follows. −1 when there is none.
 */
function closingQuote(body: string, opening: number, separator: string): number {
  let at = opening + 1;
  for (;;) {
    at = body.indexOf('"', at);
    if (at < 0) return -1;
    if (body[at + 1] === '"') {
      at += 2;
      continue;
    }
    let next = at + 1;
    while (body[next] === ' ') next++;
    const follows = body[next];
    return follows === undefined || follows === separator || follows === '\n' || follows === '\r' ? at : -1;
  }
}

function countBreaks(body: string, from: number, to: number): number {
  let breaks = 0;
  for (let at = from; at < to; at++) {
    if (body[at] === '\n' || (body[at] === '\r' && body[at + 1] !== '\n')) breaks++;
  }
  return breaks;
}

/** Letters in which the first line ends, but for a file that is no table. */
const LOOKED_AT = 20_000;

/** A comma is the last guess, because decimal commas also stand in files separated by something else. */
function guessSeparator(body: string): Separator {
  // A quoted heading may hold separators and line breaks of its own.
  const outsideQuotes = body.slice(0, LOOKED_AT).replace(/"(?:[^"]|"")*"/g, '""');
  const first = outsideQuotes.split(/\r\n|\n|\r/).find(candidate => candidate.trim() !== '') ?? '';
  for (const candidate of ['\t', ';', '|', ','] as const) {
    if (first.includes(candidate)) return candidate;
  }
  return ',';
}
