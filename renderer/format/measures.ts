/**
 * What a number on screen measures: the unit it is held in, and how it is shown in each system.
 *
 * Plain names hold SI values (what core returns: `radius` in m, `angle` in rad). Names that end in a unit
 * hold that unit (what pair files and conditions say: `widthMm`, `angleDeg`, `speedKmh`). The name decides
 * the conversion, so a view never multiplies by 1000 by hand.
 */
export interface Shown {
  /** Unit as printed, for example `mm`; empty for a bare number. */
  readonly unit: string;
  /** shown = held × factor. */
  readonly factor: number;
  /** Decimals when nothing better is known. */
  readonly decimals: number;
}

export interface Measure {
  readonly metric: Shown;
  readonly imperial: Shown;
}

export type System = 'metric' | 'imperial';

const DEG = 180 / Math.PI;
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

const shown = (unit: string, factor: number, decimals: number): Shown => ({ unit, factor, decimals });
const same = (unit: string, factor: number, decimals: number): Measure => {
  const one = shown(unit, factor, decimals);
  return { metric: one, imperial: one };
};

export const measures = {
  /** m, shown as mm or in: widths, sidecut depth, stations along the ski. */
  width: { metric: shown('mm', 1e3, 1), imperial: shown('in', 1 / INCH, 3) },
  /** m, shown as whole mm or in: stations along the ski. */
  station: { metric: shown('mm', 1e3, 0), imperial: shown('in', 1 / INCH, 1) },
  /** m, shown as mm or in: deflections and penetrations. */
  deflection: { metric: shown('mm', 1e3, 2), imperial: shown('in', 1 / INCH, 4) },
  /** m, shown as cm or in: ski lengths. */
  skiLength: { metric: shown('cm', 1e2, 1), imperial: shown('in', 1 / INCH, 1) },
  /** m, shown as m or ft: turn and sidecut radii. */
  radius: { metric: shown('m', 1, 1), imperial: shown('ft', 1 / FOOT, 0) },
  /** m, shown as m or ft: distances on the hill. */
  distance: { metric: shown('m', 1, 1), imperial: shown('ft', 1 / FOOT, 0) },
  /** rad, shown as degrees. */
  angle: same('°', DEG, 1),
  /** m/s, shown as km/h or mph. */
  speed: { metric: shown('km/h', 3.6, 1), imperial: shown('mph', 3600 / (5280 * FOOT), 1) },
  force: { metric: shown('N', 1, 0), imperial: shown('lbf', 1 / POUND_FORCE, 0) },
  /** N/m, shown as N/mm or lbf/in: springs. */
  spring: { metric: shown('N/mm', 1e-3, 2), imperial: shown('lbf/in', INCH / POUND_FORCE, 1) },
  /** N/m, shown as N/cm or lbf/in: snow line load. */
  lineLoad: { metric: shown('N/cm', 1e-2, 1), imperial: shown('lbf/in', INCH / POUND_FORCE, 2) },
  /** N·m²: EI and GJ. */
  stiffness: { metric: shown('N·m²', 1, 0), imperial: shown('lbf·ft²', 1 / (POUND_FORCE * FOOT ** 2), 0) },
  moment: { metric: shown('N·m', 1, 1), imperial: shown('lbf·ft', 1 / (POUND_FORCE * FOOT), 1) },
  mass: { metric: shown('kg', 1, 2), imperial: shown('lb', 1 / POUND, 2) },
  /** N/m³, shown as N/mm³. */
  hardness: same('N/mm³', 1e-9, 2),
  time: same('s', 1, 2),
  frequency: same('Hz', 1, 1),
  energy: same('J', 1, 0),
  /** 0–1, shown as a percentage. */
  share: same('%', 100, 0),
  bodyWeights: same('× body weight', 1, 2),
  number: same('', 1, 2),
  count: same('', 1, 0),

  /** Held in the units pair files and conditions use. */
  widthMm: { metric: shown('mm', 1, 1), imperial: shown('in', 1e-3 / INCH, 3) },
  stationMm: { metric: shown('mm', 1, 0), imperial: shown('in', 1e-3 / INCH, 2) },
  lengthMm: { metric: shown('mm', 1, 0), imperial: shown('in', 1e-3 / INCH, 2) },
  angleDeg: same('°', 1, 1),
  speedKmh: { metric: shown('km/h', 1, 0), imperial: shown('mph', 1e3 / (5280 * FOOT), 0) },
  hardnessNPerMm3: same('N/mm³', 1, 2),
  areaM2: { metric: shown('m²', 1, 2), imperial: shown('ft²', 1 / FOOT ** 2, 1) },
  density: { metric: shown('kg/m³', 1, 3), imperial: shown('lb/ft³', FOOT ** 3 / POUND, 4) },
  massKg: { metric: shown('kg', 1, 1), imperial: shown('lb', 1 / POUND, 0) },
} satisfies Record<string, Measure>;

export type MeasureName = keyof typeof measures;

/** How `measure` is shown in `system`. */
export function shownAs(measure: MeasureName, system: System): Shown {
  return measures[measure][system];
}
