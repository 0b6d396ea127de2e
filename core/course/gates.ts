import { type Accepted, type FieldFault, textFound } from '../fault/index.ts';
import { type CsvRow, readCsvNumber, readCsvRows, type Separator, splitUnit } from '../table/index.ts';
import { readStated, type SetStatement, type StatedColumn, statedColumn } from './set-statement.ts';
import { isUnreadComment, unreadComments } from './unread-rows.ts';

/**
 * A set of gates, each by its turning pole, in the plane of the slope: x across the hill, positive to the
 * right looking down, y down the fall line, m.
 */
export interface Gate {
  /** Name or number as written. */
  readonly label: string;
  readonly x: number;
  readonly y: number;
  readonly colour: string | null;
  /** +1 where the turn goes to the right, −1 to the left, null where the set itself shows it. */
  readonly turn: 1 | -1 | null;
  /** Filled cells of columns this program does not know, by heading, so that they survive a save. */
  readonly others?: readonly (readonly [heading: string, cell: string])[];
}

/** A cell, or a heading, at fault. */
export interface GateProblem extends FieldFault {
  readonly row: number;
  readonly raw: string;
}

export interface GateList {
  readonly separator: Separator;
  /** In order down the hill. */
  readonly gates: readonly Gate[];
  /** What the file states of the whole set. */
  readonly stated: SetStatement;
  readonly problems: readonly GateProblem[];
}

const words = {
  label: ['gate', 'gates', 'label', 'number', 'no', 'name', 'pole', 'nr'],
  x: ['across', 'x', 'acrossx', 'xacross', 'offset', 'sideways', 'lateral'],
  y: ['down', 'y', 'ydown', 'downy', 'distance', 'alongslope', 'downhill'],
  colour: ['colour', 'color'],
  turn: ['turn', 'side', 'turnside', 'direction'],
} as const;

type Column = keyof typeof words;

/** No set has a tenth of it; a file of anything else is told so instead of being drawn gate by gate. */
const MOST_GATES = 1000;
const MOST_COLUMNS = 1000;

const metres: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1 };
const acceptedDistance: Accepted = { key: 'course.distanceSuchAs' };

/** A heading read: which column of a gate it is, with its unit, or none. */
export function gateColumn(heading: string): { column: Column; factor: number } | null {
  const { word, unit } = splitUnit(heading);
  const named = heading.trim() === '#' ? 'no' : word;
  const column = (Object.keys(words) as Column[]).find(each =>
    (words[each] as readonly string[]).includes(named),
  );
  return column ? { column, factor: metres[unit ?? 'm'] ?? 1 } : null;
}

/** Whether the headings of this text, or of its start, name a gate's place across and down the hill. */
export function namesGates(text: string): boolean {
  const columns = readCsvRows(withoutComments(text).body).rows[0]?.fields.map(gateColumn) ?? [];
  return ['x', 'y'].every(column => columns.some(each => each?.column === column));
}

/**
 * Reads a gate list: a heading row naming gate, across and down (colour and turn may follow), one gate a row.
 * Lines ahead of it that start with `#` are comments. A column such as slope, speed or gate width states its
 * value for the whole set when all the rows that fill it agree; any other column stays with its gates. Every
 * row ends up as a gate or as a problem with its raw text, which also becomes a comment of the set, so that
 * nothing is lost when the set is saved over its file. More gates than a set can have are one problem and no set.
 * Never throws.
 */
export function readGates(text: string, separator?: Separator): GateList {
  const { body, comments } = withoutComments(text);
  const table = readCsvRows(body, separator);
  const problems: GateProblem[] = [];
  const gates: Gate[] = [];
  const [headings, ...rows] = table.rows;
  const columns = new Map<Column, { index: number; factor: number }>();
  const others = new Map<number, string>();
  const statements = new Map<StatedColumn, number>();
  if (headings && headings.fields.length > MOST_COLUMNS) {
    const { line, fields } = headings;
    const fault = { field: 'columns', found: fields.length, accepted: { to: MOST_COLUMNS } } as const;
    problems.push({ row: line, ...fault, raw: '' });
    return { separator: table.separator, gates, stated: {}, problems };
  }
  headings?.fields.forEach((heading, index) => {
    const known = gateColumn(heading);
    const states = known ? null : statedColumn(heading);
    if (known && !columns.has(known.column)) columns.set(known.column, { index, factor: known.factor });
    else if (states && !statements.has(states)) statements.set(states, index);
    else others.set(index, heading.trim() || `column ${index + 1}`);
  });
  if (!columns.has('x') || !columns.has('y')) {
    const missing = [...(columns.has('x') ? [] : ['across']), ...(columns.has('y') ? [] : ['down'])].join(
      ' and ',
    );
    for (const row of table.rows.length > 0 ? table.rows : [{ line: 1, raw: '' }]) {
      const fault = { field: missing, found: undefined, accepted: { key: 'course.gateHeadings' } } as const;
      problems.push({ row: row.line, ...fault, raw: row.raw });
    }
    return { separator: table.separator, gates, stated: {}, problems };
  }
  if (rows.length > MOST_GATES) {
    const first = rows[MOST_GATES];
    const fault = { field: 'gates', found: rows.length, accepted: { to: MOST_GATES } } as const;
    problems.push({ row: first.line, ...fault, raw: first.raw });
    return { separator: table.separator, gates, stated: {}, problems };
  }
  const fault = (row: CsvRow, field: string, found: string, accepted: Accepted): void => {
    problems.push({ row: row.line, field, found: textFound(found), accepted, raw: row.raw });
  };

  let stated: SetStatement = {};
  for (const [column, index] of statements) {
    const filled = rows.filter(row => row.fields[index]?.trim());
    const heading = headings.fields[index];
    const [first] = filled;
    if (!first) continue;
    const cell = first.fields[index].trim();
    if (filled.some(row => row.fields[index].trim() !== cell)) {
      // What differs from gate to gate is no statement of the set.
      others.set(index, heading.trim());
      continue;
    }
    const read = readStated(column, heading, cell);
    if (read.ok) stated = { ...stated, ...read.value };
    else fault(first, heading.trim(), cell, read.accepted);
  }

  const width = headings.fields.length;
  const kept = [...others].sort(([a], [b]) => a - b);
  for (const row of rows) {
    const cell = (column: Column): string => {
      const at = columns.get(column);
      return at === undefined ? '' : (row.fields[at.index] ?? '').trim();
    };
    const distance = (column: 'x' | 'y', field: string): number | null => {
      const written = cell(column);
      const number = readCsvNumber(written);
      const factor = number?.unit == null ? columns.get(column)!.factor : metres[number.unit];
      if (number === null || factor === undefined || Math.abs(number.value * factor) > 1e5) {
        fault(row, field, written, acceptedDistance);
        return null;
      }
      // No gate stands at −0.
      return number.value * factor + 0;
    };
    const turn = readTurn(cell('turn'));
    if (turn === undefined) fault(row, 'turn', cell('turn'), { oneOf: ['left', 'right'] });
    const x = distance('x', 'across');
    const y = distance('y', 'down');
    if (x === null || y === null || turn === undefined) continue;
    const beside = [
      ...kept.map(([index, heading]) => [heading, row.fields[index]?.trim() ?? ''] as const),
      ...row.fields.slice(width).map((field, i) => [`column ${width + i + 1}`, field.trim()] as const),
    ].filter(([, field]) => field !== '');
    gates.push({
      label: cell('label') || String(gates.length + 1),
      x,
      y,
      colour: cell('colour') || null,
      turn,
      ...(beside.length > 0 && { others: beside }),
    });
  }
  gates.sort((a, b) => a.y - b.y);
  const carried = [...comments, ...unreadComments(problems)];
  if (carried.length > 0) stated = { ...stated, comments: carried };
  return { separator: table.separator, gates, stated, problems };
}

/** Takes the lines ahead of the headings that start with `#` out, leaving their line breaks. */
function withoutComments(text: string): { body: string; comments: string[] } {
  const comments: string[] = [];
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i];
    if (line.trim() === '') continue;
    // "#, across, down" is a heading row: the number sign is short for the gate's number.
    if (!line.startsWith('#')) break;
    const cells = isUnreadComment(line) ? [] : (readCsvRows(line).rows[0]?.fields ?? []);
    // The sign has a cell of its own there: "#x|y" is a comment.
    const named = cells[0]?.trim() === '#' ? cells.map(gateColumn) : [];
    if (['x', 'y'].every(column => named.some(each => each?.column === column))) break;
    comments.push(line.slice(1));
    lines[i] = '';
  }
  return comments.length === 0 ? { body: text, comments } : { body: lines.join('\n'), comments };
}

function readTurn(text: string): 1 | -1 | null | undefined {
  switch (text.toLowerCase()) {
    case '':
      return null;
    case 'left':
    case 'l':
      return -1;
    case 'right':
    case 'r':
      return 1;
    default:
      return undefined;
  }
}
