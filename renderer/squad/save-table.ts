import { radiusOf, type SquadRow } from '../answers/index.ts';
import { exportTable } from '../files/index.ts';
import { extraOf } from '../state/index.ts';
import { shownRows } from './squad-state.ts';

/** Columns this program writes for reading only; a sheet that was written here brings them back. */
const OWN = ['sidecut radius in m', 'edges done', 'waxed', 'due', 'look again'];

/** The table as rows for a file, with headings that the import reads back. */
function squadTable(rows: readonly SquadRow[]): (string | number)[][] {
  // Cells of a technician's own columns go out as they came in.
  const cellsOf = (pair: SquadRow['pair']) => new Map(extraOf(pair));
  const extras = [...new Set(rows.flatMap(row => [...cellsOf(row.pair).keys()]))].filter(
    heading => !OWN.includes(heading),
  );
  return [
    [
      'owner',
      'name',
      'discipline',
      'length (mm)',
      'contact length (mm)',
      'tip (mm)',
      'waist (mm)',
      'tail (mm)',
      'side edge (deg)',
      'base bevel (deg)',
      'mass (kg)',
      'sidecut radius in m',
      'edges done',
      'waxed',
      'due',
      'look again',
      'notes',
      ...extras,
    ],
    ...rows.map(({ pair, owner, due, odd }) => [
      owner,
      pair.name,
      pair.discipline ?? 'other',
      pair.lengthMm,
      pair.contactLengthMm,
      pair.tipWidthMm,
      pair.waistWidthMm,
      pair.tailWidthMm,
      pair.edges?.sideAngleDeg ?? '',
      pair.edges?.baseBevelDeg ?? '',
      pair.massKg ?? '',
      radiusOf(pair)?.toFixed(2) ?? '',
      due.edge.last ?? '',
      due.wax.last ?? '',
      [due.edge.due && 'edges', due.wax.due && 'wax'].filter(Boolean).join(' and '),
      odd.join(' · '),
      pair.notes ?? '',
      ...extras.map(heading => cellsOf(pair).get(heading) ?? ''),
    ]),
  ];
}

export const saveTable = (): Promise<void> => exportTable('squad.csv', squadTable(shownRows.value));
