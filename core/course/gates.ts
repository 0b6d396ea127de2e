import { readCsvNumber, readCsvRows, type Separator, splitUnit, writeCsvRows } from '../pair/index.ts';

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

/**
 * Reads a gate list: a heading row naming gate, across and down (colour and turn may follow), one gate a row.
 * Every row ends up as a gate or as a problem with its raw text. Never throws.
 */
export function readGates(text: string, separator?: Separator): GateList {
  const table = readCsvRows(text, separator);
  const problems: GateProblem[] = [];
  const gates: Gate[] = [];
  const [headings, ...rows] = table.rows;
  const columns = new Map<Column, { index: number; factor: number }>();
  headings?.fields.forEach((heading, index) => {
    const { word, unit } = splitUnit(heading);
    const named = (Object.keys(words) as Column[]).find(column =>
      (words[column] as readonly string[]).includes(word),
    );
    if (named && !columns.has(named)) columns.set(named, { index, factor: metres[unit ?? 'm'] ?? 1 });
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
    return { separator: table.separator, gates, problems };
  }

  for (const row of rows) {
    const cell = (column: Column): string => {
      const at = columns.get(column);
      return at === undefined ? '' : (row.fields[at.index] ?? '').trim();
    };
    const fault = (field: string, found: string, accepted: string): void => {
      const shown = found === '' ? 'nothing' : JSON.stringify(found);
      const message = `${field}: found ${shown}; accepted is ${accepted}`;
      problems.push({ row: row.line, field, found: shown, accepted, message, raw: row.raw });
    };
    const distance = (column: 'x' | 'y', field: string): number | null => {
      const written = cell(column);
      const number = readCsvNumber(written);
      const factor = number?.unit == null ? columns.get(column)!.factor : metres[number.unit];
      if (number === null || factor === undefined || Math.abs(number.value * factor) > 1e5) {
        fault(field, written, acceptedDistance);
        return null;
      }
      return number.value * factor;
    };
    const turn = readTurn(cell('turn'));
    if (turn === undefined) fault('turn', cell('turn'), 'left or right');
    const x = distance('x', 'across');
    const y = distance('y', 'down');
    if (x === null || y === null || turn === undefined) continue;
    gates.push({
      label: cell('label') || String(gates.length + 1),
      x,
      y,
      colour: cell('colour') || null,
      turn,
    });
  }
  gates.sort((a, b) => a.y - b.y);
  return { separator: table.separator, gates, problems };
}

/** A gate list as a file, with units in the headings. */
export function writeGates(gates: readonly Gate[], separator: Separator = ','): string {
  const turned = gates.some(gate => gate.turn !== null);
  return writeCsvRows(
    [
      ['gate', 'across (m)', 'down (m)', 'colour', ...(turned ? ['turn'] : [])],
      ...gates.map(gate => [
        gate.label,
        String(gate.x),
        String(gate.y),
        gate.colour ?? '',
        ...(turned ? [gate.turn === null ? '' : gate.turn > 0 ? 'right' : 'left'] : []),
      ]),
    ],
    separator,
  );
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
