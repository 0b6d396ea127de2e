import { radiusOf } from '../rack/radius.ts';
import { exportTable } from './export-table.ts';
import type { SquadRow } from './squad-row.ts';
import { shownRows } from './squad-state.ts';

/** The table as rows for a file, with headings that the import reads back. */
export function squadTable(rows: readonly SquadRow[]): (string | number)[][] {
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
    ]),
  ];
}

export const saveTable = (): Promise<void> => exportTable('squad.csv', squadTable(shownRows.value));
