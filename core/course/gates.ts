import {
  type CsvRow,
  readCsvNumber,
  readCsvRows,
  type Separator,
  splitUnit,
  writeCsvRows,
} from '../pair/index.ts';
import {
  readStated,
  type SetStatement,
  type StatedColumn,
  statedColumn,
  statedColumns,
  writeStated,
} from './set-statement.ts';
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

export interface GateProblem {
  readonly row: number;
  readonly field: string;
  readonly found: string;
  readonly accepted: string;
  readonly message: string;
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

const metres: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1 };
const acceptedDistance = 'a distance in metres such as 12.5';

/** A heading read: which column of a gate it is, with its unit, or none. */
function gateColumn(heading: string): { column: Column; factor: number } | null {
  const { word, unit } = splitUnit(heading);
  const named = heading.trim() === '#' ? 'no' : word;
  const column = (Object.keys(words) as Column[]).find(each =>
    (words[each] as readonly string[]).includes(named),
  );
  return column ? { column, factor: metres[unit ?? 'm'] ?? 1 } : null;
}

/**
 * Reads a gate list: a heading row naming gate, across and down (colour and turn may follow), one gate a row.
 * Lines ahead of it that start with `#` are comments. A column such as slope, speed or gate width states its
 * value for the whole set when all the rows that fill it agree; any other column stays with its gates. Every
 * row ends up as a gate or as a problem with its raw text, which also becomes a comment of the set, so that
 * nothing is lost when the set is saved over its file. Never throws.
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
    const accepted = 'a first row with the headings gate, across, down';
    for (const row of table.rows.length > 0 ? table.rows : [{ line: 1, raw: '' }]) {
      const message = `the file has no column for ${missing}; accepted is ${accepted}`;
      problems.push({ row: row.line, field: missing, found: 'nothing', accepted, message, raw: row.raw });
    }
    return { separator: table.separator, gates, stated: {}, problems };
  }
  const fault = (row: CsvRow, field: string, found: string, accepted: string): void => {
    const shown = found === '' ? 'nothing' : JSON.stringify(found);
    const message = `${field}: found ${shown}; accepted is ${accepted}`;
    problems.push({ row: row.line, field, found: shown, accepted, message, raw: row.raw });
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
      return number.value * factor;
    };
    const turn = readTurn(cell('turn'));
    if (turn === undefined) fault(row, 'turn', cell('turn'), 'left or right');
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

/** A gate list as a file, with units in the headings; what is stated of the whole set stands in the first row. */
export function writeGates(
  gates: readonly Gate[],
  separator: Separator = ',',
  stated: SetStatement = {},
): string {
  const others = otherColumns(gates);
  const borne = new Set(others.map(({ heading }) => gateColumn(heading)?.column ?? statedColumn(heading)));
  // A column of that meaning is written, empty if need be, so that the gates' own is not read for it.
  const turned = borne.has('turn') || gates.some(gate => gate.turn !== null);
  const statements = statedColumns
    .map(column => ({ column, ...writeStated(stated, column) }))
    .filter(({ column, cell }) => cell !== null || borne.has(column));
  const comments = (stated.comments ?? []).map(line => `#${line}\n`).join('');
  return (
    comments +
    writeCsvRows(
      [
        [
          'gate',
          'across (m)',
          'down (m)',
          'colour',
          ...(turned ? ['turn'] : []),
          ...statements.map(({ heading }) => heading),
          ...others.map(({ heading }) => heading),
        ],
        ...gates.map((gate, row) => [
          gate.label,
          decimal(gate.x),
          decimal(gate.y),
          gate.colour ?? '',
          ...(turned ? [gate.turn === null ? '' : gate.turn > 0 ? 'right' : 'left'] : []),
          ...statements.map(({ cell }) => (row === 0 ? (cell ?? '') : '')),
          ...others.map(({ heading, nth }) => cellsUnder(gate, heading)[nth] ?? ''),
        ]),
      ],
      separator,
    )
  );
}

/** Without an exponent, which sheets and this reader do not take: less than a micrometre is none. */
const decimal = (metres: number): string =>
  String(Math.abs(metres) < 1e-6 ? Number(metres.toFixed(6)) + 0 : metres);

/** The gate's cells under a heading that may come more than once, in order. */
const cellsUnder = (gate: Gate, heading: string): string[] =>
  (gate.others ?? []).filter(([each]) => each === heading).map(([, cell]) => cell);

/** Every heading of the gates' other cells, as often as one gate has it, in the order they come up. */
function otherColumns(gates: readonly Gate[]): { heading: string; nth: number }[] {
  const most = new Map<string, number>();
  for (const { others } of gates) {
    const counts = new Map<string, number>();
    for (const [heading] of others ?? []) counts.set(heading, (counts.get(heading) ?? 0) + 1);
    for (const [heading, count] of counts) most.set(heading, Math.max(most.get(heading) ?? 0, count));
  }
  return [...most].flatMap(([heading, count]) =>
    Array.from({ length: count }, (_, nth) => ({ heading, nth })),
  );
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
    const named = isUnreadComment(line) ? [] : readCsvRows(line).rows[0]?.fields.map(gateColumn);
    if (!named || ['x', 'y'].every(column => named.some(each => each?.column === column))) break;
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
