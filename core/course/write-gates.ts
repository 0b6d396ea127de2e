import { type Separator, writeCsvRows } from '../table/index.ts';
import { type Gate, gateColumn } from './gates.ts';
import { type SetStatement, statedColumn, statedColumns, writeStated } from './set-statement.ts';

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
        ...gates.map((gate, row) => {
          const cells = cellsOf(gate);
          return [
            gate.label,
            decimal(gate.x),
            decimal(gate.y),
            gate.colour ?? '',
            ...(turned ? [gate.turn === null ? '' : gate.turn > 0 ? 'right' : 'left'] : []),
            ...statements.map(({ cell }) => (row === 0 ? (cell ?? '') : '')),
            ...others.map(({ heading, nth }) => cells.get(heading)?.[nth] ?? ''),
          ];
        }),
      ],
      separator,
    )
  );
}

/** Without an exponent, which sheets and this reader do not take: less than a micrometre is none. */
const decimal = (metres: number): string =>
  String(Math.abs(metres) < 1e-6 ? Number(metres.toFixed(6)) + 0 : metres);

/** The gate's cells by heading; a heading may come more than once. */
function cellsOf(gate: Gate): ReadonlyMap<string, readonly string[]> {
  const cells = new Map<string, string[]>();
  for (const [heading, cell] of gate.others ?? []) {
    const under = cells.get(heading);
    if (under) under.push(cell);
    else cells.set(heading, [cell]);
  }
  return cells;
}

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
