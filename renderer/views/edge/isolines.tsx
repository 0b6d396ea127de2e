import { contours, geoPath, geoTransform } from 'd3';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { type RadiusTable, tableRadius } from '../../../core/carve/index.ts';
import { DEGREE, type System, shownAs } from '../../../core/units/index.ts';
import { LEAST_EDGE, LEAST_LOAD, MOST_EDGE, MOST_LOAD } from '../../answers/index.ts';
import { view } from '../../state/index.ts';
import { scalesFor } from './map-scales.ts';

const COLUMNS = 74;
const ROWS = 40;

/** Round radii in the unit shown, close together where turns are tight. */
const METRES = [2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 23, 26, 30, 35, 40, 45, 50, 60, 80];
const FEET = [6, 8, 10, 13, 16, 20, 25, 30, 35, 40, 50, 60, 75, 90, 100, 120, 150, 200, 250];

interface Isoline {
  readonly level: number;
  readonly path: string;
  /** Where its label stands; null where it would touch its neighbour's. */
  readonly label: { readonly x: number; readonly y: number } | null;
}

function isolinesOf(table: RadiusTable, width: number, height: number, system: System): Isoline[] {
  const { x, y } = scalesFor(width, height);
  const values = new Array<number>(COLUMNS * ROWS);
  const angleAt = (column: number) => LEAST_EDGE + ((MOST_EDGE - LEAST_EDGE) * column) / (COLUMNS - 1);
  const loadAt = (row: number) => LEAST_LOAD + ((MOST_LOAD - LEAST_LOAD) * row) / (ROWS - 1);
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const radius = tableRadius(table, angleAt(column) * DEGREE, loadAt(row));
      values[row * COLUMNS + column] = radius;
      least = Math.min(least, radius);
      most = Math.max(most, radius);
    }
  }
  // Contours lie on cell middles: half a cell off the grid's own count.
  const path = geoPath(
    geoTransform({
      point(column, row) {
        this.stream.point(x(angleAt(column - 0.5)), y(loadAt(row - 0.5)));
      },
    }),
  );
  const { factor } = shownAs('radius', system);
  const shown = system === 'metric' ? METRES : FEET;
  const levels = shown.map(level => level / factor).filter(level => level > least && level < most);
  const row = Math.round(ROWS * 0.62);
  let before = Number.NEGATIVE_INFINITY;
  // From the left, where radii are long.
  return contours()
    .size([COLUMNS, ROWS])
    .thresholds(levels)(values)
    .reverse()
    .map(area => {
      const at = crossing(values, row, area.value);
      const px = at === null ? Number.NaN : x(angleAt(at));
      const fits = px - before >= 26 && px >= 10 && px <= width - 10;
      if (fits) before = px;
      return { level: area.value, path: path(area) ?? '', label: fits ? { x: px, y: y(loadAt(row)) } : null };
    });
}

/** Column, with its fraction, at which a row falls below a level; null when it never does. */
function crossing(values: readonly number[], row: number, level: number): number | null {
  for (let column = 1; column < COLUMNS; column++) {
    const before = values[row * COLUMNS + column - 1]!;
    const after = values[row * COLUMNS + column]!;
    if (before >= level && after < level) return column - (level - after) / (before - after);
  }
  return null;
}

/** Lines of equal turn radius, with their radii on them. */
export function Isolines(props: {
  table: RadiusTable;
  colour: string;
  width: number;
  height: number;
}): JSX.Element {
  const { table, colour, width, height } = props;
  const { system } = view.value;
  // A drag moves the point, not the lines.
  const lines = useMemo(() => isolinesOf(table, width, height, system), [table, width, height, system]);
  const { factor } = shownAs('radius', system);
  return (
    <g>
      <svg x={0} y={0} width={width} height={height} overflow="hidden" role="presentation">
        {lines.map(({ level, path }) => (
          <path key={level} class="isoline" d={path} fill={colour} stroke={colour} />
        ))}
      </svg>
      {lines.map(({ level, label }) =>
        label ? (
          <text
            key={level}
            class="halo isoline-label"
            x={label.x}
            y={label.y}
            text-anchor="middle"
            dominant-baseline="central"
          >
            {(level * factor).toFixed(0)}
          </text>
        ) : null,
      )}
    </g>
  );
}
