/**
 * The one table of units: what each measures and its size in SI. Inch, foot, mile and pound are exact by
 * definition (international yard and pound agreement, 1959), the pound-force by standard gravity 9.80665 m/s².
 */
const INCH = 0.0254;
const FOOT = 12 * INCH;
const MILE = 5280 * FOOT;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const POUND_FORCE = POUND * GRAVITY;
const DEGREE = Math.PI / 180;

/** By kind: first the spellings that are shown and suggested, then what else is understood. */
const KINDS: Readonly<Record<string, { readonly units: Sizes; readonly also?: Sizes }>> = {
  length: {
    units: { mm: 1e-3, cm: 1e-2, m: 1, in: INCH, ft: FOOT },
    also: { '"': INCH, '″': INCH, inch: INCH, inches: INCH, "'": FOOT, '′': FOOT, feet: FOOT },
  },
  area: {
    units: { 'm²': 1, 'ft²': FOOT ** 2 },
    also: { 'm^2': 1, m2: 1, 'ft^2': FOOT ** 2, ft2: FOOT ** 2 },
  },
  angle: { units: { '°': DEGREE, deg: DEGREE, rad: 1 }, also: { degree: DEGREE, degrees: DEGREE } },
  angleRate: { units: { 'rad/s': 1, '°/s': DEGREE } },
  speed: {
    units: { 'km/h': 1 / 3.6, 'm/s': 1, mph: MILE / 3600 },
    also: { kmh: 1 / 3.6, 'mi/h': MILE / 3600, 'ft/s': FOOT },
  },
  force: { units: { N: 1, kN: 1e3, lbf: POUND_FORCE, kgf: GRAVITY } },
  mass: { units: { kg: 1, g: 1e-3, lb: POUND }, also: { lbs: POUND } },
  massPerLength: { units: { 'kg/m': 1, 'lb/ft': POUND / FOOT } },
  density: {
    units: { 'kg/m³': 1, 'g/cm³': 1e3, 'lb/ft³': POUND / FOOT ** 3 },
    also: { 'kg/m3': 1, 'kg/m^3': 1, 'g/cm3': 1e3, 'g/cm^3': 1e3 },
  },
  modulus: {
    units: { GPa: 1e9, MPa: 1e6, 'N/mm²': 1e6, psi: POUND_FORCE / INCH ** 2 },
    also: { kPa: 1e3, Pa: 1, 'N/mm2': 1e6, 'N/mm^2': 1e6, ksi: (1e3 * POUND_FORCE) / INCH ** 2 },
  },
  moment: { units: { N·m: 1, lbf·ft: POUND_FORCE * FOOT }, also: { 'N*m': 1, Nm: 1 } },
  lateralStiffness: {
    units: { 'N·m/°': 1 / DEGREE, 'N·m/rad': 1, 'lbf·ft/°': (POUND_FORCE * FOOT) / DEGREE },
    also: { 'Nm/°': 1 / DEGREE, 'N·m/deg': 1 / DEGREE, 'Nm/deg': 1 / DEGREE, 'Nm/rad': 1 },
  },
  stiffness: {
    units: { 'N·m²': 1, 'lbf·ft²': POUND_FORCE * FOOT ** 2, 'lbf·in²': POUND_FORCE * INCH ** 2 },
    also: {
      'N*m^2': 1,
      'N m²': 1,
      Nm2: 1,
      'lbf ft²': POUND_FORCE * FOOT ** 2,
      'lbf in²': POUND_FORCE * INCH ** 2,
    },
  },
  spring: { units: { 'N/mm': 1e3, 'N/cm': 1e2, 'N/m': 1, 'lbf/in': POUND_FORCE / INCH } },
  hardness: {
    units: { 'N/mm³': 1e9, 'N/m³': 1 },
    also: { 'N/mm3': 1e9, 'N/mm^3': 1e9, 'N/m3': 1, 'N/m^3': 1 },
  },
  time: { units: { s: 1, ms: 1e-3, min: 60 } },
  frequency: { units: { Hz: 1 } },
  energy: { units: { J: 1, kJ: 1e3 } },
  share: { units: { '%': 0.01 } },
};

type Sizes = Readonly<Record<string, number>>;

export interface Unit {
  readonly kind: string;
  /** SI value of one of it. */
  readonly size: number;
}

const units = new Map<string, Unit>();
for (const [kind, { units: shown, also = {} }] of Object.entries(KINDS)) {
  for (const [spelling, size] of [...Object.entries(shown), ...Object.entries(also)]) {
    units.set(spelling.toLowerCase(), { kind, size });
  }
}

/** The unit a spelling stands for, capitals or not; null when it is none. */
export const unitOf = (spelling: string): Unit | null => units.get(spelling.toLowerCase()) ?? null;

/**
 * SI value of one unit.
 *
 * @throws RangeError when the spelling stands for no unit of the table
 */
export function sizeOf(spelling: string): number {
  const unit = unitOf(spelling);
  if (unit === null) throw new RangeError(`unit: "${spelling}" found; accepted is one of the table of units`);
  return unit.size;
}

/** Spellings to suggest for a kind. */
export const spellingsOf = (kind: string): string[] => Object.keys(KINDS[kind]?.units ?? {});
