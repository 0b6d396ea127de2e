import { sizeOf } from './table.ts';

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

type How = readonly [unit: string, decimals: number];

/** `held` is the unit of the value as held; without one it is held in SI. */
function measure(metric: How, imperial: How = metric, held?: string): Measure {
  const one = held === undefined ? 1 : sizeOf(held);
  const shown = ([unit, decimals]: How): Shown => ({ unit, factor: one / sizeOf(unit), decimals });
  return { metric: shown(metric), imperial: shown(imperial) };
}

/** A number that no unit of the table belongs to. */
function bare(unit: string, decimals: number): Measure {
  const one = { unit, factor: 1, decimals };
  return { metric: one, imperial: one };
}

export const measures = {
  /** m, shown as mm or in: widths, sidecut depth, stations along the ski. */
  width: measure(['mm', 1], ['in', 3]),
  /** m, shown as whole mm or in: stations along the ski. */
  station: measure(['mm', 0], ['in', 1]),
  /** m, shown as mm or in: what a ski bends on the bench. */
  deflection: measure(['mm', 2], ['in', 4]),
  /** m, shown as mm or in: depths in the snow, and what a ski bends in it. */
  depth: measure(['mm', 1], ['in', 2]),
  /** m, shown as cm or in: ski lengths. */
  skiLength: measure(['cm', 1], ['in', 1]),
  /** m, shown as m or ft: turn and sidecut radii. */
  radius: measure(['m', 1], ['ft', 1]),
  /** m, shown as m or ft: distances on the hill. */
  distance: measure(['m', 1], ['ft', 0]),
  /** m, shown to the centimetre: a body, a leg, a gate's clearance. */
  bodyLength: measure(['m', 2], ['ft', 2]),
  /** rad, shown as degrees. */
  angle: measure(['°', 1]),
  /** rad/s, shown as it is held. */
  angleRate: measure(['rad/s', 1]),
  /** m/s, shown as km/h or mph. */
  speed: measure(['km/h', 1], ['mph', 1]),
  /** m/s, shown as m/s or ft/s: how fast a leg folds. */
  legSpeed: measure(['m/s', 2], ['ft/s', 1]),
  force: measure(['N', 0], ['lbf', 0]),
  /** N/m, shown as N/mm or lbf/in: springs. */
  spring: measure(['N/mm', 2], ['lbf/in', 1]),
  /** N/m, shown as N/cm or lbf/in: snow line load. */
  lineLoad: measure(['N/cm', 1], ['lbf/in', 2]),
  /** N·m²: EI and GJ. */
  stiffness: measure(['N·m²', 0], ['lbf·ft²', 0]),
  moment: measure(['N·m', 1], ['lbf·ft', 1]),
  mass: measure(['kg', 2], ['lb', 2]),
  massPerLength: measure(['kg/m', 3], ['lb/ft', 3]),
  /** N/m³, shown as N/mm³. */
  hardness: measure(['N/mm³', 2]),
  time: measure(['s', 2]),
  frequency: measure(['Hz', 1]),
  energy: measure(['J', 0]),
  /** J, shown as kJ: what a whole run takes. */
  work: measure(['kJ', 1]),
  /** 0–1, shown as a percentage. */
  share: measure(['%', 0]),
  bodyWeights: bare('× body weight', 2),
  /** Body weights a second: how fast a push builds up. */
  bodyWeightRate: bare('× body weight/s', 0),
  number: bare('', 2),
  count: bare('', 0),

  /** Held in the units pair files and conditions use. */
  widthMm: measure(['mm', 1], ['in', 3], 'mm'),
  stationMm: measure(['mm', 0], ['in', 2], 'mm'),
  lengthMm: measure(['mm', 0], ['in', 2], 'mm'),
  angleDeg: measure(['°', 1], ['°', 1], '°'),
  speedKmh: measure(['km/h', 0], ['mph', 0], 'km/h'),
  hardnessNPerMm3: measure(['N/mm³', 2], ['N/mm³', 2], 'N/mm³'),
  pressureKPa: measure(['kPa', 0], ['psi', 1], 'kPa'),
  depthMm: measure(['mm', 2], ['in', 3], 'mm'),
  areaM2: measure(['m²', 2], ['ft²', 1]),
  density: measure(['kg/m³', 3], ['lb/ft³', 4]),
  /** Lateral stiffness of boot and leg. */
  bootStiffnessNmPerDeg: measure(['N·m/°', 0], ['lbf·ft/°', 1], 'N·m/°'),
  massKg: measure(['kg', 1], ['lb', 0]),
} satisfies Record<string, Measure>;

export type MeasureName = keyof typeof measures;

/** How `name` is shown in `system`. */
export function shownAs(name: MeasureName, system: System): Shown {
  return measures[name][system];
}
