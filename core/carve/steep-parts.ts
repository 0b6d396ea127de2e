import type { FinerCell } from './radius-refinement.ts';
import type { RadiusTable } from './radius-table.ts';

/** A stretch of edge angles (rad) by a stretch of log loads. */
export interface TablePart {
  readonly edgeFrom: number;
  readonly edgeTo: number;
  readonly logLoadFrom: number;
  readonly logLoadTo: number;
}

/** The parts of a table across which its radius changes too steeply, or jumps, to be interpolated. */
export function steepParts({ edgeAngles, loads, finer }: RadiusTable): TablePart[] {
  const parts: TablePart[] = [];
  const walk = (cell: FinerCell, place: TablePart): void => {
    if ('corners' in cell) {
      if (cell.steep) parts.push(place);
      return;
    }
    if (cell.along === 'edge') {
      const middle = 0.5 * (place.edgeFrom + place.edgeTo);
      walk(cell.below, { ...place, edgeTo: middle });
      walk(cell.above, { ...place, edgeFrom: middle });
    } else {
      const middle = 0.5 * (place.logLoadFrom + place.logLoadTo);
      walk(cell.below, { ...place, logLoadTo: middle });
      walk(cell.above, { ...place, logLoadFrom: middle });
    }
  };
  for (const [index, cell] of finer ?? []) {
    const i = Math.floor(index / (loads.length - 1));
    const j = index % (loads.length - 1);
    walk(cell, {
      edgeFrom: edgeAngles[i],
      edgeTo: edgeAngles[i + 1],
      logLoadFrom: Math.log(loads[j]),
      logLoadTo: Math.log(loads[j + 1]),
    });
  }
  return parts;
}
